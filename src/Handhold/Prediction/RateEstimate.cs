namespace Handhold;

/// <summary>What is known of a keeper rate. The mean is the chance of one frame; the interval lies inside 0..1.</summary>
public sealed class RateEstimate
{
    internal RateEstimate(double median, double mean, CredibleInterval interval) => (Median, Mean, Interval) = (median, mean, interval);

    /// <summary>Median.</summary>
    public double Median { get; }

    /// <summary>Mean: the chance that one frame is a keeper.</summary>
    public double Mean { get; }

    /// <summary>Equal-tailed interval.</summary>
    public CredibleInterval Interval { get; }
}
