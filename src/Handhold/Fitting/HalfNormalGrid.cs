using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>Nodes 0, d, 2d, ... and log weights for a half-normal luck: the trapezoid rule on the even extension of the integrand.</summary>
internal sealed record HalfNormalGrid(double Step, ImmutableArray<double> Nodes, ImmutableArray<double> LogWeights)
{
    /// <summary>Luck that is not there.</summary>
    internal static HalfNormalGrid None { get; } = new(0, [0], [0]);

    /// <summary>Nodes up to <paramref name="reach"/> prior scales.</summary>
    internal static HalfNormalGrid For(HalfNormalPrior prior, int halvings, double reach)
    {
        var step = Math.ScaleB(prior.Scale, -halvings);
        ImmutableArray<double> nodes = [.. Enumerable.Range(0, (int)Math.Round(reach * prior.Scale / step) + 1).Select(i => i * step)];
        ImmutableArray<double> logs = [.. nodes.Select((s, i) => Math.Log(step * (i == 0 ? 0.5 : 1)) + LogDensity(prior, s))];
        return new(step, nodes, logs);
    }

    internal static double LogDensity(HalfNormalPrior prior, double sd) =>
        0.5 * Math.Log(2 / Math.PI) - Math.Log(prior.Scale) - 0.5 * (sd / prior.Scale) * (sd / prior.Scale);
}
