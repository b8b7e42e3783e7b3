namespace Handhold.Kernels;

/// <summary>How heavy the tail of importance weights is.</summary>
/// <remarks>
/// The largest weights, 3 √n of them but at most a fifth, follow a generalised Pareto distribution of shape k above a threshold; estimates from the weights
/// can be trusted while k is at most 0.7. Sources: Vehtari, Simpson, Gelman, Yao, Gabry (2024), Journal of Machine Learning Research 25(72), section 2;
/// the fit of k and its weak prior towards 0.5: Zhang and Stephens (2009), Technometrics 51, 316-325, and appendix C of the former.
/// </remarks>
internal static class ParetoTail
{
    private const int Fewest = 5;

    /// <summary>The shape k of the tail; minus infinity when all weights in it are equal.</summary>
    /// <param name="weights">Weights, not negative, any scale.</param>
    internal static double Shape(ReadOnlySpan<double> weights)
    {
        var sorted = weights.ToArray();
        Array.Sort(sorted);
        var tail = (int)Math.Min(sorted.Length / 5.0, Math.Ceiling(3 * Math.Sqrt(sorted.Length)));
        if (tail < Fewest)
            return double.PositiveInfinity;
        var threshold = sorted[^(tail + 1)];
        return ShapeAbove(Array.ConvertAll(sorted[^tail..], w => w - threshold));
    }

    /// <summary>The posterior mean of k under the prior of Zhang and Stephens, drawn towards 0.5 with the weight of ten observations.</summary>
    /// <param name="excesses">Excesses over the threshold, ascending.</param>
    private static double ShapeAbove(double[] excesses)
    {
        var n = excesses.Length;
        if (!(excesses[^1] > 0))
            return double.NegativeInfinity;
        var quartile = excesses[(int)Math.Floor(n / 4.0 + 0.5) - 1];
        if (!(quartile > 0))
            quartile = excesses.First(e => e > 0);
        var candidates = 30 + (int)Math.Sqrt(n);
        var (theta, log) = (new double[candidates], new double[candidates]);
        for (var i = 0; i < candidates; i++)
        {
            theta[i] = 1 / excesses[^1] + (1 - Math.Sqrt(candidates / (i + 0.5))) / (3 * quartile);
            var k = MeanLog(theta[i], excesses);
            log[i] = n * (Math.Log(-theta[i] / k) - k - 1);
        }

        var top = log.Max();
        var (sum, mean) = (0.0, 0.0);
        for (var i = 0; i < candidates; i++)
        {
            var weight = Math.Exp(log[i] - top);
            sum += weight;
            mean += weight * theta[i];
        }

        return (MeanLog(mean / sum, excesses) * n + 0.5 * 10) / (n + 10);
    }

    private static double MeanLog(double theta, double[] excesses)
    {
        var sum = 0.0;
        foreach (var excess in excesses)
            sum += Elementary.Log1p(-theta * excess);
        return sum / excesses.Length;
    }
}
