using System.Collections.Immutable;
using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;

namespace Handhold.Plots;

/// <summary>A plot in the making: frame, words, marks, and labels that keep clear of the marks.</summary>
internal sealed class Figure(Palette palette)
{
    private readonly List<DirectLabel> _labels = [];
    private readonly List<Obstacle> _obstacles = [];
    private AxisLimits _limits;

    public Plot Plot { get; } = new();

    public Palette Palette { get; } = palette;

    private Lettering Lettering { get; } = new();

    /// <summary>Ticks with words of their own.</summary>
    public static NumericManual Ticks(IEnumerable<(double At, string Words)> ticks)
    {
        NumericManual manual = new();
        foreach (var (at, words) in ticks)
        {
            manual.AddMajor(at, words);
        }

        return manual;
    }

    public void Frame(AxisLimits limits, (string Label, ITickGenerator Ticks) x, (string Label, ITickGenerator Ticks) y)
    {
        _limits = limits;
        Dress(Plot, Lettering, Palette);
        Plot.Axes.SetLimits(limits);
        Plot.Axes.Bottom.TickGenerator = x.Ticks;
        Plot.Axes.Bottom.Label.Text = x.Label;
        Plot.Axes.Left.TickGenerator = y.Ticks;
        Plot.Axes.Left.Label.Text = y.Label;
    }

    /// <summary>Colours, layout and lettering that all pictures share.</summary>
    public static void Dress(Plot plot, Lettering lettering, Palette palette)
    {
        plot.FigureBackground.Color = palette.Paper;
        plot.DataBackground.Color = palette.Tested;
        plot.Grid.MajorLineColor = palette.Grid;
        plot.Layout.LayoutEngine = new PlotLayout();
        plot.HideLegend();
        foreach (var axis in plot.Axes.GetAxes())
        {
            lettering.Dress(axis.Label, "", Lettering.Body, palette.Quiet);
            lettering.Dress(axis.TickLabelStyle, "", Lettering.Body, palette.Ink);
            axis.FrameLineStyle.Color = palette.Quiet;
            axis.MajorTickStyle.Color = palette.Quiet;
            axis.MinorTickStyle.Color = palette.Quiet;
        }

        plot.Axes.Top.IsVisible = false;
        plot.Axes.Top.MinimumSize = 4;
        plot.Axes.Right.IsVisible = false;
        plot.Axes.Right.MinimumSize = PlotLayout.Margin + 4;
    }

    public void Words(PictureWords words) => Write(Plot, Lettering, Palette, words);

    /// <summary>Title, subject, captions, and what is said to those who cannot see.</summary>
    public static void Write(Plot plot, Lettering lettering, Palette palette, PictureWords words)
    {
        lettering.Dress(plot.Axes.Title.Label, words.Title, Lettering.Title, palette.Ink, bold: true);
        plot.Axes.Title.Label.Alignment = Alignment.LowerLeft;
        AddPanel(Edge.Top, [words.Subject], Lettering.Body, 3);
        AddPanel(Edge.Bottom, words.Captions, Lettering.Small, 4);
        plot.Add.Plottable(new Spoken(words.Aloud));

        void AddPanel(Edge edge, ImmutableArray<string> paragraphs, float size, float padding)
        {
            var full = paragraphs.RemoveAll(p => p.Length == 0);
            if (!full.IsEmpty)
            {
                plot.Axes.AddPanel(new TextPanel(edge, full, lettering.Of(string.Join('\n', full), size, palette.Quiet), padding));
            }
        }
    }

    public void Line(
        IReadOnlyList<double> xs,
        IReadOnlyList<double> ys,
        Color color,
        string name,
        float width = 2.5f,
        LinePattern? pattern = null
    )
    {
        var line = Plot.Add.ScatterLine(xs.ToArray(), ys.ToArray(), color);
        line.LineWidth = width;
        line.LinePattern = pattern ?? LinePattern.Solid;
        line.LegendText = name;
        for (var i = 1; i < xs.Count; i++)
        {
            KeepAlong(new(xs[i - 1], ys[i - 1]), new(xs[i], ys[i]));
        }
    }

    /// <summary>A straight stroke, which labels keep clear of.</summary>
    public void Stroke(Coordinates from, Coordinates to, Color color, float width, string name)
    {
        var line = Plot.Add.Line(from, to);
        line.Color = color;
        line.LineWidth = width;
        line.MarkerSize = 0;
        line.LegendText = name;
        Keep(from.X, to.X, from.Y, to.Y, width / 2);
    }

    /// <summary>An interval along a row, with an arrow where it is open or runs out of what is shown.</summary>
    public void Interval(double y, double? lower, double? upper, (double Low, double High) shown, float width)
    {
        var tip = (shown.High - shown.Low) * 0.02;
        Stroke(
            new(Math.Max(lower ?? shown.Low, shown.Low), y),
            new(Math.Min(upper ?? shown.High, shown.High), y),
            Palette.Curve,
            width,
            "interval"
        );
        if (lower is null || lower < shown.Low)
        {
            Arrow(shown.Low, tip);
        }

        if (upper is null || upper > shown.High)
        {
            Arrow(shown.High, -tip);
        }

        void Arrow(double at, double back)
        {
            Stroke(new(at, y), new(at + back, y + 0.12), Palette.Curve, 2, "open");
            Stroke(new(at, y), new(at + back, y - 0.12), Palette.Curve, 2, "open");
        }
    }

    /// <summary>What lies between two lines; labels may stand on it.</summary>
    public void Band(IReadOnlyList<double> xs, IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        var band = Plot.Add.FillY([.. xs], [.. lower], [.. upper]);
        (band.FillColor, band.LineWidth, band.LegendText) = (Palette.Band, 0, "band");
    }

    public Marker Point(double x, double y, MarkerShape shape, float size, Color color, bool hollow = false)
    {
        var point = Plot.Add.Marker(x, y, shape, size, hollow ? Palette.Tested : color);
        point.MarkerStyle.OutlineColor = hollow ? color : Palette.Tested;
        point.MarkerStyle.OutlineWidth = hollow ? 2 : 1.5f;
        Keep(x, x, y, y, (size / 2) + 1);
        return point;
    }

    /// <summary>A bar up from zero.</summary>
    public void Bar(double x, double width, double height, Color color, bool hollow)
    {
        var bar = Plot.Add.Rectangle(x - (width / 2), x + (width / 2), 0, height);
        bar.FillColor = hollow ? Palette.Tested : color;
        bar.LineColor = color;
        bar.LineWidth = 1.5f;
        Keep(x - (width / 2), x + (width / 2), 0, height, 1);
    }

    /// <summary>A word beside what it names, at the first spot that is free.</summary>
    public void Say(string words, Color color, IEnumerable<LabelSpot> spots, bool bold = false, float size = Lettering.Body) =>
        _labels.Add(
            new DirectLabel(
                Lettering.Of(words, size, color, bold),
                [.. spots],
                new CoordinateRect(_limits.Left, _limits.Right, _limits.Bottom, _limits.Top)
            )
        );

    /// <summary>Labels keep clear of this.</summary>
    public void Keep(double x1, double x2, double y1, double y2, float margin) =>
        _obstacles.Add(new Obstacle(new CoordinateRect(Math.Min(x1, x2), Math.Max(x1, x2), Math.Min(y1, y2), Math.Max(y1, y2)), margin));

    /// <summary>A slanted piece of a line in steps, since a box around all of it would keep labels from far away.</summary>
    private void KeepAlong(Coordinates from, Coordinates to)
    {
        const int Steps = 16;
        Coordinates At(int i) => new(from.X + ((to.X - from.X) * i / Steps), from.Y + ((to.Y - from.Y) * i / Steps));
        for (var i = 0; i < Steps; i++)
        {
            Keep(At(i).X, At(i + 1).X, At(i).Y, At(i + 1).Y, 2);
        }
    }

    /// <summary>The finished plot.</summary>
    public Plot Finish()
    {
        Plot.Add.Plottable(new DirectLabels([.. _labels], [.. _obstacles]));
        return Plot;
    }
}
