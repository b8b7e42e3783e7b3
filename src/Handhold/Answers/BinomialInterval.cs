using Handhold.Kernels;

namespace Handhold;

/// <summary>Intervals for a keeper rate from a count of independent frames alone.</summary>
/// <remarks>
/// All treat keepers and rejects alike: exchanging them mirrors the interval. Checked by golden/binomial-intervals.
/// Source of the comparison: Newcombe (1998), Statistics in Medicine 17, 857-872.
/// </remarks>
public static class BinomialInterval
{
    private delegate double LowerEnd(int keepers, int frames, double tail);

    /// <summary>Wilson's score interval: covers about the stated share on average over the rates.</summary>
    /// <remarks>
    /// The rates p with (k/n - p)² ≤ z² p (1 - p) / n, z the normal quantile of (1 + level)/2.
    /// Source: Wilson (1927), Journal of the American Statistical Association 22, 209-212.
    /// </remarks>
    /// <param name="keepers">Keepers, from 0 to <paramref name="frames"/>.</param>
    /// <param name="frames">Frames, at least 1.</param>
    /// <param name="level">Confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count or the level lies outside its range.</exception>
    public static ConfidenceInterval Wilson(int keepers, int frames, double level = 0.95) =>
        BothEnds((k, n, tail) => WilsonLower((double)k / n, n, tail), keepers, frames, level, "wilson");

    /// <summary>The same where what was counted tells no more than a smaller number would.</summary>
    internal static ConfidenceInterval Wilson(int kept, int of, double worth, double level)
    {
        var tail = (1 - level) / 2;
        return new(WilsonLower((double)kept / of, worth, tail), 1 - WilsonLower((double)(of - kept) / of, worth, tail), level, "wilson");
    }

    /// <summary>Clopper and Pearson's exact interval: covers at least the stated share at every rate, so it is wide.</summary>
    /// <remarks>
    /// The rates at which neither P(at least k of n) nor P(at most k of n) falls below (1 - level)/2; its ends are beta quantiles.
    /// Source: Clopper and Pearson (1934), Biometrika 26, 404-413.
    /// </remarks>
    /// <inheritdoc cref="Wilson(int, int, double)" path="/param"/>
    /// <inheritdoc cref="Wilson(int, int, double)" path="/exception"/>
    public static ConfidenceInterval ClopperPearson(int keepers, int frames, double level = 0.95) =>
        BothEnds(ClopperPearsonLower, keepers, frames, level, "clopperPearson");

    /// <summary>The exact interval with half the chance of the observed count: covers close to the stated share, sometimes less.</summary>
    /// <remarks>
    /// The rates at which neither P(more than k) + P(k)/2 nor P(fewer than k) + P(k)/2 falls below (1 - level)/2.
    /// Source: Lancaster (1961), Journal of the American Statistical Association 56, 223-234.
    /// </remarks>
    /// <inheritdoc cref="Wilson(int, int, double)" path="/param"/>
    /// <inheritdoc cref="Wilson(int, int, double)" path="/exception"/>
    public static ConfidenceInterval MidP(int keepers, int frames, double level = 0.95) =>
        BothEnds(MidPLower, keepers, frames, level, "midP");

    /// <summary>The equal-tailed posterior interval under Jeffreys' prior, beta(1/2, 1/2); its ends never reach 0 or 1.</summary>
    /// <remarks>Quantiles of beta(k + 1/2, n - k + 1/2). Source: Brown, Cai and DasGupta (2001), Statistical Science 16, 101-133.</remarks>
    /// <param name="keepers">Keepers, from 0 to <paramref name="frames"/>.</param>
    /// <param name="frames">Frames, at least 1.</param>
    /// <param name="level">Probability inside, above 0 and below 1.</param>
    /// <inheritdoc cref="Wilson(int, int, double)" path="/exception"/>
    public static CredibleInterval Jeffreys(int keepers, int frames, double level = 0.95)
    {
        var tail = Tail(keepers, frames, level);
        var (a, b) = (keepers + 0.5, frames - keepers + 0.5);
        return new(Beta.Quantile(tail, a, b).X, Beta.Quantile(tail, b, a).OneMinusX, level);
    }

    // The upper end for keepers is one minus the lower end for rejects.
    private static ConfidenceInterval BothEnds(LowerEnd lower, int keepers, int frames, double level, string method)
    {
        var tail = Tail(keepers, frames, level);
        return new(lower(keepers, frames, tail), 1 - lower(frames - keepers, frames, tail), level, method);
    }

    private static double Tail(int keepers, int frames, double level)
    {
        Check.Count(frames, 1, int.MaxValue, "Frames of an interval");
        Check.Count(keepers, 0, frames, FormattableString.Invariant($"Keepers among {frames} frames"));
        return (1 - Check.Share(level, "The level of an interval")) / 2;
    }

    // The smaller root of (1 + c) p² - (2q + c) p + q² = 0, q = k/n and c = z²/n, as q² over the sum that does not cancel.
    private static double WilsonLower(double rate, double frames, double tail)
    {
        var z = -Normal.Quantile(tail);
        var c = z * z / frames;
        return rate * rate / (rate + c / 2 + Math.Sqrt(c * (rate * (1 - rate) + c / 4)));
    }

    private static double ClopperPearsonLower(int keepers, int frames, double tail) =>
        keepers == 0 ? 0 : Beta.Quantile(tail, keepers, frames - keepers + 1).X;

    // Bisection to the last digit, from the exact lower end up to the observed rate.
    private static double MidPLower(int keepers, int frames, double tail)
    {
        var (low, high) = (ClopperPearsonLower(keepers, frames, tail), (double)keepers / frames);
        for (var middle = (low + high) / 2; low < middle && middle < high; middle = (low + high) / 2)
        {
            var beyond = Binomial.Tails(keepers + 1.0, frames, middle, 1 - middle).AtLeast;
            var half = 0.5 * Math.Exp(Binomial.LogMass(keepers, frames, middle, 1 - middle));
            (low, high) = beyond + half < tail ? (middle, high) : (low, middle);
        }
        return low;
    }
}
