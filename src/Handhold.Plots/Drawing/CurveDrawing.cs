using ScottPlot;

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
        Figure.Dress(_plot, _lettering, Palette);
        _plot.Axes.SetLimits(_shown.Min, _shown.Max, Bottom, Top);
        _plot.Axes.Bottom.TickGenerator = new MarkedSpeedTicks(_scene.Marks);
        _plot.Axes.Bottom.Label.Text = "Shutter speed (s)";
        _plot.Axes.Left.TickGenerator = Figure.Ticks(Enumerable.Range(0, 6).Select(i => (i / 5.0, CurveWords.Percent(i / 5.0))));
        _plot.Axes.Left.Label.Text = "Keepers";
    }

    private void DrawWords() =>
        Figure.Write(_plot, _lettering, Palette, new PictureWords(_scene.Title, _scene.Subject, _scene.Captions, CurveWords.Aloud(_scene)));
}
