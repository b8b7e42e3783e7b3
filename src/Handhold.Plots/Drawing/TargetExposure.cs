using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>The exposures that have a wanted rate: a median, pieces whose absent ends are unbounded, and a label that says so.</summary>
internal sealed record TargetExposure(
    double Rate,
    double? Log2Seconds,
    ImmutableArray<(double? Lower, double? Upper)> Pieces,
    string Label
);
