using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>The exposures that have a wanted rate.</summary>
/// <param name="Rate">The rate.</param>
/// <param name="Log2Seconds">Median exposure; null when there is none, or it is too far from those tested.</param>
/// <param name="Pieces">The interval set; an absent end is unbounded.</param>
/// <param name="IsReachable">False when the rate is probably above the ceiling.</param>
internal sealed record TargetExposure(
    double Rate,
    double? Log2Seconds,
    ImmutableArray<(double? Lower, double? Upper)> Pieces,
    bool IsReachable = true
);
