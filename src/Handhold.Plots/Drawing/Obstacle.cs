using ScottPlot;

namespace Handhold.Plots;

/// <summary>Something drawn that no text may cover: a rectangle in coordinates, and a margin in pixels.</summary>
internal readonly record struct Obstacle(CoordinateRect Rect, float Margin);
