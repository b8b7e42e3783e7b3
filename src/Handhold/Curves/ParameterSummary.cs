namespace Handhold;

/// <summary>What is known of one parameter after the data.</summary>
public sealed class ParameterSummary
{
    private readonly Lazy<double>? _nodeChange;

    internal ParameterSummary(
        string name,
        double median,
        double mean,
        double standardDeviation,
        CredibleInterval interval,
        string prior,
        Lazy<double>? nodeChange = null
    ) =>
        (Name, Median, Mean, StandardDeviation, Interval, Prior, _nodeChange) = (
            name,
            median,
            mean,
            standardDeviation,
            interval,
            prior,
            nodeChange
        );

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

    /// <summary>Where levels vary: by how many standard deviations the mean would move with more quadrature nodes (15 instead of 9 for the finest levels), to first order; of a level's effect through the parameters. Above 0.05 either way it is approximate. Null elsewhere; NaN where more nodes find no number. Computed when asked.</summary>
    public double? NodeChange => _nodeChange?.Value;
}
