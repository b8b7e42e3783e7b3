namespace Handhold;

/// <summary>What is known of one parameter after the data.</summary>
public sealed class ParameterSummary
{
    internal ParameterSummary(string name, double median, double mean, double standardDeviation, CredibleInterval interval, string prior) =>
        (Name, Median, Mean, StandardDeviation, Interval, Prior) = (name, median, mean, standardDeviation, interval, prior);

    /// <summary>Name, such as <c>tau0</c>, <c>log2b</c>, <c>ceiling</c>, <c>sessionLuck</c>, <c>burstLuck</c>.</summary>
    public string Name { get; }

    /// <summary>Posterior median.</summary>
    public double Median { get; }

    /// <summary>Posterior mean.</summary>
    public double Mean { get; }

    /// <summary>Posterior standard deviation.</summary>
    public double StandardDeviation { get; }

    /// <summary>Equal-tailed interval.</summary>
    public CredibleInterval Interval { get; }

    /// <summary>The prior that was used, as text.</summary>
    public string Prior { get; }
}
