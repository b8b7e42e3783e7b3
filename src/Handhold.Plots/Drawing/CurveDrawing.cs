using System.Collections.Immutable;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace Handhold.Plots;

/// <summary>Turns a scene into a plot.</summary>
internal sealed partial class CurveDrawing
{
    /// <summary>Lower end of the rate axis: room for dots at 0 %.</summary>
    private const double Bottom = -0.045;

    /// <summary>Where the row of counts starts on the rate axis: above dots at 100 %.</summary>
    private const double Row = 1.045;

    /// <summary>Upper end of the rate axis, and of the row of counts.</summary>
    private const double Top = 1.14;

    /// <summary>Beyond every exposure of a camera, log2 seconds: shading has no end to pan to.</summary>
    private const double Far = 40;

    private readonly Plot _plot;
    private readonly Lettering _lettering = new();
    private readonly CurveScene _scene;
    private readonly CoordinateRange _shown;

    private Palette Palette => _scene.Palette;

    private CurveDrawing(Plot plot, CurveScene scene)
    {
        _plot = plot;
        _scene = scene;
        _shown = Shown(scene.Fastest, scene.Slowest, scene.Target.Log2Seconds);
    }

    public static Plot Draw(CurveScene scene)
    {
        Plot plot = new();
        CurveDrawing drawing = new(plot, scene);
        drawing.DrawFrame();
        drawing.DrawWords();
        drawing.DrawCurve();
        drawing.DrawBlanks();
        drawing.DrawTargetLines();
        drawing.DrawObserved();
        drawing.DrawTargetPoint();
        drawing.DrawLabels();
        plot.Add.Plottable(new Spoken(CurveWords.Aloud(scene)));
        return plot;
    }

    /// <summary>Exposures shown: a stop around those tested, half a stop around the target, four stops at least.</summary>
    internal static CoordinateRange Shown(double fastest, double slowest, double? target)
    {
        var low = Math.Min(fastest - 1, (target ?? fastest) - 0.5);
        var high = Math.Max(slowest + 1, (target ?? slowest) + 0.5);
        var missing = Math.Max(0, 4 - (high - low)) / 2;
        return new CoordinateRange(low - missing, high + missing);
    }

    private void DrawFrame()
    {
        _plot.FigureBackground.Color = Palette.Paper;
        _plot.DataBackground.Color = Palette.Tested;
        _plot.Grid.MajorLineColor = Palette.Grid;
        _plot.Layout.LayoutEngine = new PlotLayout();
        _plot.HideLegend();
        _plot.Axes.SetLimits(_shown.Min, _shown.Max, Bottom, Top);
        _plot.Axes.Bottom.TickGenerator = new MarkedSpeedTicks(_scene.Marks);
        var percents = Enumerable.Range(0, 6).Select(i => i / 5.0).ToArray();
        _plot.Axes.Left.TickGenerator = new NumericManual(percents, [.. percents.Select(CurveWords.Percent)]);
        foreach (var axis in _plot.Axes.GetAxes())
        {
            _lettering.Dress(axis.Label, "", Lettering.Body, Palette.Quiet);
            _lettering.Dress(axis.TickLabelStyle, "", Lettering.Body, Palette.Ink);
            axis.FrameLineStyle.Color = Palette.Quiet;
            axis.MajorTickStyle.Color = Palette.Quiet;
            axis.MinorTickStyle.Color = Palette.Quiet;
        }

        _plot.Axes.Top.IsVisible = false;
        _plot.Axes.Top.MinimumSize = 4;
        _plot.Axes.Right.IsVisible = false;
        _plot.Axes.Right.MinimumSize = PlotLayout.Margin + 4;
    }

    private void DrawWords()
    {
        _plot.Axes.Bottom.Label.Text = "Shutter speed (s)";
        _plot.Axes.Left.Label.Text = "Keepers";
        _lettering.Dress(_plot.Axes.Title.Label, _scene.Title, Lettering.Title, Palette.Ink, bold: true);
        _plot.Axes.Title.Label.Alignment = Alignment.LowerLeft;
        AddPanel(Edge.Top, [_scene.Subject], Lettering.Body, 3);
        AddPanel(Edge.Bottom, _scene.Captions, Lettering.Small, 4);
    }

    private void AddPanel(Edge edge, ImmutableArray<string> paragraphs, float size, float padding)
    {
        var full = paragraphs.RemoveAll(p => p.Length == 0);
        if (!full.IsEmpty)
        {
            _plot.Axes.AddPanel(new TextPanel(edge, full, _lettering.Of(string.Join('\n', full), size, Palette.Quiet), padding));
        }
    }
}
