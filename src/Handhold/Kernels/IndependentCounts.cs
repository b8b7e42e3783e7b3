namespace Handhold.Kernels;

/// <summary>Counts that add up: the law of the keepers of several bursts that share nothing.</summary>
internal static class IndependentCounts
{
    /// <summary>The law of a sum: entry j of <paramref name="sum"/> is Σ a(i) b(j - i), for as many entries as it has room for.</summary>
    /// <param name="a">Chances of 0, 1, 2, … in one part.</param>
    /// <param name="b">Chances of 0, 1, 2, … in the other part.</param>
    /// <param name="sum">Chances of 0, 1, 2, … in both; not the same memory as a or b.</param>
    internal static void Add(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> sum)
    {
        sum.Clear();
        for (var i = 0; i < Math.Min(a.Length, sum.Length); i++)
        {
            if (a[i] == 0)
                continue;
            var room = Math.Min(b.Length, sum.Length - i);
            for (var j = 0; j < room; j++)
                sum[i + j] += a[i] * b[j];
        }
    }
}
