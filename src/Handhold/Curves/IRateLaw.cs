namespace Handhold.Curves;

/// <summary>What is known of the keeper rate along exposures (log2 seconds): a posterior's distribution, or the confidence that a likelihood gives.</summary>
internal interface IRateLaw
{
    /// <summary>Probability, or one-sided confidence, that the rate at an exposure is at most <paramref name="rate"/>.</summary>
    double RateCdf(double exposure, double rate);

    /// <summary>The rate below which it lies with probability, or one-sided confidence, <paramref name="p"/>.</summary>
    double RateQuantile(double exposure, double p);

    /// <summary>The chance that one frame is a keeper; NaN where the data leave it open altogether.</summary>
    double MeanRate(double exposure);

    /// <summary>The distribution of one burst's keeper probability at an exposure.</summary>
    BurstRates BurstRates(double exposure);
}
