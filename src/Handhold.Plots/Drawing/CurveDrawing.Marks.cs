using ScottPlot;
using ScottPlot.Plottables;

namespace Handhold.Plots;

internal sealed partial class CurveDrawing
{
    private void DrawCurve()
    {
        var band = _plot.Add.FillY([.. _scene.Log2Seconds], [.. _scene.Lower], [.. _scene.Upper]);
        band.FillColor = Palette.Band;
        band.LineWidth = 0;
        band.LegendText = "band";

        var median = _plot.Add.ScatterLine(_scene.Log2Seconds.ToArray(), _scene.Median.ToArray(), Palette.Curve);
        median.LineWidth = 2.5f;
        median.LegendText = "median";
        if (_scene.Ceiling is { } ceiling)
        {
            _plot.Add.HorizontalLine(ceiling, 1, Palette.Curve).LegendText = "ceiling";
        }
    }

    /// <summary>A veil over what lies beyond the speeds tested, and a blank row for the counts.</summary>
    private void DrawBlanks()
    {
        Blank(_plot.Add.HorizontalSpan(-Far, _scene.Fastest), Palette.Paper.WithAlpha(0.68));
        Blank(_plot.Add.HorizontalSpan(_scene.Slowest, Far), Palette.Paper.WithAlpha(0.68));
        Blank(_plot.Add.VerticalSpan(Row, Far), Palette.Paper);
    }

    private static void Blank(AxisSpan span, Color color)
    {
        span.FillColor = color;
        span.LineWidth = 0;
        span.EnableAutoscale = false;
    }

    private void DrawObserved()
    {
        var rates = _scene.Observed;
        ErrorBar bars = new(
            rates.Select(o => o.Log2Seconds).ToArray(),
            rates.Select(o => o.Rate).ToArray(),
            xErrorsPositive: null,
            xErrorsNegative: null,
            yErrorsPositive: rates.Select(o => o.Upper - o.Rate).ToArray(),
            yErrorsNegative: rates.Select(o => o.Rate - o.Lower).ToArray()
        )
        {
            Color = Palette.Quiet,
            LineWidth = 1.2f,
            CapSize = 0,
            LegendText = "observed",
        };
        _plot.Add.Plottable(bars);
        foreach (var observed in rates)
        {
            AddPoint(observed.Log2Seconds, observed.Rate, MarkerShape.FilledCircle, DotSize(observed.Frames), Palette.Ink);
        }
    }

    private void DrawTargetLines()
    {
        var target = _scene.Target;
        _plot.Add.HorizontalLine(target.Rate, 1, Palette.Target).LegendText = "target";
        foreach (var (lower, upper) in target.Pieces)
        {
            var (from, to) = (Math.Max(lower ?? _shown.Min, _shown.Min), Math.Min(upper ?? _shown.Max, _shown.Max));
            AddTargetLine(new Coordinates(from, target.Rate), new Coordinates(to, target.Rate), 5).LegendText = "exposures for the target";
        }

        if (target.Log2Seconds is { } exposure)
        {
            AddTargetLine(new Coordinates(exposure, target.Rate), new Coordinates(exposure, Bottom), 1);
        }
    }

    private void DrawTargetPoint()
    {
        if (_scene.Target.Log2Seconds is { } exposure)
        {
            AddPoint(exposure, _scene.Target.Rate, MarkerShape.FilledDiamond, TargetSize, Palette.Target);
        }
    }

    private LinePlot AddTargetLine(Coordinates from, Coordinates to, float width)
    {
        var line = _plot.Add.Line(from, to);
        line.Color = Palette.Target;
        line.LineWidth = width;
        line.MarkerSize = 0;
        return line;
    }

    private void AddPoint(double log2Seconds, double rate, MarkerShape shape, float size, Color color)
    {
        var point = _plot.Add.Marker(log2Seconds, rate, shape, size, color);
        point.MarkerStyle.OutlineColor = Palette.Tested;
        point.MarkerStyle.OutlineWidth = 1.5f;
    }

    private const float TargetSize = 15;

    /// <summary>Diameter in pixels: the area is in proportion to the frames; six frames are 10 pixels wide, unless the largest count would pass 18.</summary>
    private float DotSize(int frames) =>
        (float)(Math.Sqrt(frames) * Math.Min(10 / Math.Sqrt(6), 18 / Math.Sqrt(_scene.Observed.Max(o => o.Frames))));
}
