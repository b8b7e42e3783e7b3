using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>A text and the spots where it may stand, best first.</summary>
/// <param name="Style">The look, text included.</param>
/// <param name="Spots">Where it may stand.</param>
/// <param name="Room">Log2 seconds and rates that it must not leave.</param>
internal sealed record DirectLabel(LabelStyle Style, ImmutableArray<LabelSpot> Spots, CoordinateRect Room);
