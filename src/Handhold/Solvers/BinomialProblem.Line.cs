namespace Handhold.Solvers;

public sealed partial record BinomialProblem
{
    /// <summary>Whether this is an intercept of ones and one covariate that varies clearly, under the logit without asymptotes or offsets.</summary>
    internal bool IsPlainLine()
    {
        if (Columns.Length != 2 || Link != Link.Logit || Ceiling != 1 || Floor != 0 || !Offset.IsEmpty)
            return false;
        var design = Design.Span;
        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < design.Length; i += 2)
        {
            if (design[i] != 1)
                return false;
            (least, most) = (Math.Min(least, design[i + 1]), Math.Max(most, design[i + 1]));
        }
        var (range, largest) = (most - least, Math.Max(Math.Abs(least), Math.Abs(most)));
        return range > 1e-8 * largest && range > 1e-50 && largest < 1e50;
    }

    /// <summary>Whether, beside that, there are at most 64 rows, and their x lie in steps of which none is longer than twice another.</summary>
    /// <remarks>
    /// The penalised likelihood of such lines had its highest maximum at the end of one of two climbs, from even odds and from the likelihood's maximum, in 60 000
    /// random tables searched by brute force; with one x far from the others it has several.
    /// </remarks>
    internal bool IsEvenLine()
    {
        const int Most = 64;
        if (Rows > Most || !IsPlainLine())
            return false;
        var design = Design.Span;
        var x = (stackalloc double[Most])[..Rows];
        for (var i = 0; i < x.Length; i++)
            x[i] = design[2 * i + 1];
        x.Sort();
        var (shortest, longest) = (double.PositiveInfinity, 0.0);
        for (var i = 1; i < x.Length; i++)
            if (x[i] - x[i - 1] is > 0 and var gap)
                (shortest, longest) = (Math.Min(shortest, gap), Math.Max(longest, gap));
        return longest <= 2 * shortest;
    }
}
