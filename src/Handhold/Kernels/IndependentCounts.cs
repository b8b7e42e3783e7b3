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

    /// <summary>The law of the sum of <paramref name="times"/> parts that are alike, for as many entries as <paramref name="sum"/> has room for.</summary>
    internal static void Repeat(ReadOnlySpan<double> one, int times, Span<double> sum)
    {
        var (square, product) = (new double[sum.Length], new double[sum.Length]);
        one[..Math.Min(one.Length, square.Length)].CopyTo(square);
        sum.Clear();
        sum[0] = 1;
        for (var e = times; e > 0; e >>= 1)
        {
            if ((e & 1) == 1)
            {
                Add(sum, square, product);
                product.CopyTo(sum);
            }
            if (e == 1)
                break;
            Add(square, square, product);
            product.CopyTo(square, 0);
        }
    }
}
