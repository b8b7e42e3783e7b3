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

    /// <summary>Keepers of one burst at an exposure.</summary>
    IBurstLaw BurstRates(double exposure);

    /// <summary>Whether frames of a burst share luck; where not, several bursts are as one.</summary>
    bool SharesLuck { get; }

    /// <summary>Keepers of several bursts with a fresh grip each.</summary>
    IBurstsLaw Bursts(double exposure);

    /// <summary>Correlation of two frames of one burst at an exposure, about the rate of their day; 0 where frames share nothing, NaN where the rate is left open.</summary>
    double BurstCorrelation(double exposure);
}
