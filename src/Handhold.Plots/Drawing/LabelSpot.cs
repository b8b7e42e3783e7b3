using ScottPlot;

namespace Handhold.Plots;

/// <summary>A place for a text: the <paramref name="Alignment"/> corner or side of the text touches the point, but for a gap in pixels.</summary>
internal readonly record struct LabelSpot(double Log2Seconds, double Rate, Alignment Alignment, float Gap = 4);
