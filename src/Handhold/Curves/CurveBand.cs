using System.Collections.Immutable;
using Handhold.Curves;

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

    /// <summary>Intervals of each exposure by itself; where the data leave the rate open, the line runs through the middle.</summary>
    internal static CurveBand Pointwise(IRateLaw law, double level, double fastest, double slowest, int points)
    {
        ImmutableArray<double> exposures = [.. Enumerable.Range(0, points).Select(i => fastest + (slowest - fastest) * i / (points - 1))];
        ImmutableArray<double> lower = [.. exposures.Select(x => law.RateQuantile(x, (1 - level) / 2))];
        ImmutableArray<double> upper = [.. exposures.Select(x => law.RateQuantile(x, (1 + level) / 2))];
        ImmutableArray<double> middle =
        [
            .. exposures.Select((x, i) => law.MeanRate(x) is var rate and >= 0 ? rate : (lower[i] + upper[i]) / 2),
        ];
        return new(exposures, middle, lower, upper, level);
    }
}
