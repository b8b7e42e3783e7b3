namespace Handhold;

/// <summary>What is known of a keeper rate. The mean is the chance of one frame; the interval lies inside 0..1.</summary>
public sealed class RateEstimate
{
    internal RateEstimate(double median, double mean, Interval interval) => (Median, Mean, Interval) = (median, mean, interval);

    /// <summary>Median; without a posterior, the estimate.</summary>
    public double Median { get; }

    /// <summary>Mean: the chance that one frame is a keeper; without a posterior, the estimate.</summary>
    public double Mean { get; }

    /// <summary>Equal-tailed interval of a posterior, or profile interval of a likelihood.</summary>
    public Interval Interval { get; }
}
