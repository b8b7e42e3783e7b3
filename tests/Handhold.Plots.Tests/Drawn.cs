using ScottPlot;
using ScottPlot.Plottables;

namespace Handhold.Plots.Tests;

/// <summary>A scene of one curve drawn at a size, and what came of it.</summary>
internal sealed class Drawn(CurveScene scene, int width, int height) : Rendered(CurveDrawing.Draw(scene), width, height)
{
    public CurveScene Scene { get; } = scene;

    public IEnumerable<Marker> Dots => Plot.PlottableList.OfType<Marker>().Where(m => m.MarkerShape == MarkerShape.FilledCircle);
}
