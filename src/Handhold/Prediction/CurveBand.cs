using System.Collections.Immutable;

namespace Handhold;

/// <summary>The keeper rate along exposures, for drawing: equal-tailed at each exposure.</summary>
public sealed class CurveBand
{
    internal CurveBand(
        ImmutableArray<double> log2Seconds,
        ImmutableArray<double> median,
        ImmutableArray<double> lower,
        ImmutableArray<double> upper,
        double level
    ) => (Log2Seconds, Median, Lower, Upper, Level) = (log2Seconds, median, lower, upper, level);

    /// <summary>Exposures, log2 seconds, rising.</summary>
    public ImmutableArray<double> Log2Seconds { get; }

    /// <summary>Median rate.</summary>
    public ImmutableArray<double> Median { get; }

    /// <summary>Lower end.</summary>
    public ImmutableArray<double> Lower { get; }

    /// <summary>Upper end.</summary>
    public ImmutableArray<double> Upper { get; }

    /// <summary>Probability inside.</summary>
    public double Level { get; }
}
