using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns several curves into a plot.</summary>
internal static class SetupsPicture
{
    /// <summary>Height of a strip below zero, on the rate axis.</summary>
    private const double Strip = 0.14;

    private static readonly ImmutableArray<MarkerShape> s_shapes =
    [
        MarkerShape.FilledDiamond,
        MarkerShape.FilledCircle,
        MarkerShape.FilledSquare,
        MarkerShape.FilledTriangleUp,
        MarkerShape.FilledTriangleDown,
        MarkerShape.OpenCircle,
    ];

    /// <summary>Where along a line its letter may stand, best first.</summary>
    private static readonly ImmutableArray<double> s_places =
    [
        0.5,
        0.45,
        0.55,
        0.4,
        0.6,
        0.35,
        0.65,
        0.3,
        0.7,
        0.25,
        0.75,
        0.2,
        0.8,
        0.15,
        0.85,
        0.1,
        0.9,
    ];

    private static LinePattern Pattern(int i) =>
        (i % 3) switch
        {
            0 => LinePattern.Solid,
            1 => LinePattern.Dashed,
            _ => LinePattern.DenselyDashed,
        };

    public static Plot Draw(SetupsScene scene)
    {
        Figure figure = new(scene.Palette);
        var shown = new CoordinateRange(scene.Lines.Min(l => l.Scene.Log2Seconds[0]), scene.Lines.Max(l => l.Scene.Log2Seconds[^1]));
        var bottom = -0.1 - (Strip * scene.Lines.Length);
        figure.Frame(
            new AxisLimits(shown.Min, shown.Max, bottom, 1.06),
            ("Shutter speed (s)", new MarkedSpeedTicks(scene.Marks)),
            ("Keepers", Figure.Ticks(Enumerable.Range(0, 6).Select(i => (i / 5.0, CurveWords.Percent(i / 5.0)))))
        );
        figure.Stroke(new(shown.Min, scene.Rate), new(shown.Max, scene.Rate), figure.Palette.Quiet, 1, "target");
        figure.Stroke(new(shown.Min, -0.03), new(shown.Max, -0.03), figure.Palette.Quiet, 1, "zero");
        foreach (var (i, line) in scene.Lines.Index())
        {
            DrawLine(figure, i, line, shown, -0.07 - (Strip * (i + 0.5)));
        }

        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static void DrawLine(Figure figure, int i, SetupLine line, CoordinateRange shown, double strip)
    {
        var (scene, color, letter) = (line.Scene, figure.Palette.Series[i], ((char)('A' + i)).ToString());
        var tested = Enumerable
            .Range(0, scene.Log2Seconds.Length)
            .Where(k => scene.Log2Seconds[k] >= scene.Fastest - 0.5 && scene.Log2Seconds[k] <= scene.Slowest + 0.5)
            .ToArray();
        var (xs, ys) = (tested.Select(k => scene.Log2Seconds[k]).ToArray(), tested.Select(k => scene.Median[k]).ToArray());
        figure.Line(xs, ys, color, line.Name, pattern: Pattern(i));
        figure.Say(
            letter,
            color,
            s_places
                .Select(share => (int)(share * (xs.Length - 1)))
                .SelectMany(k =>
                    new LabelSpot[]
                    {
                        new(xs[k], ys[k], Alignment.LowerLeft, 3),
                        new(xs[k], ys[k], Alignment.UpperRight, 3),
                        new(xs[k], ys[k], Alignment.MiddleLeft, 6),
                        new(xs[k], ys[k], Alignment.LowerCenter, 5),
                    }
                ),
            bold: true
        );
        var ends = new List<double>();
        foreach (var (lower, upper) in scene.Target.Pieces)
        {
            var (from, to) = (Math.Max(lower ?? shown.Min, shown.Min), Math.Min(upper ?? shown.Max, shown.Max));
            figure.Stroke(new(from, strip), new(to, strip), color, 4, "exposures for the target");
            ends.AddRange([from, to]);
        }

        if (scene.Target.Log2Seconds is { } exposure)
        {
            figure.Point(exposure, strip, s_shapes[i], 11, color);
            ends.Add(exposure);
        }

        var said =
            $"{letter}  {line.Name}: "
            + (
                scene.Target.Log2Seconds is { } x ? CurveWords.Speed(x, scene.Marks)
                : scene.Target.IsReachable ? "not within the speeds tested"
                : "not reachable"
            );
        figure.Say(
            said,
            color,
            [
                new(ends.DefaultIfEmpty(shown.Center).Max(), strip, Alignment.MiddleLeft, 8),
                new(ends.DefaultIfEmpty(shown.Center).Min(), strip, Alignment.MiddleRight, 8),
                new(shown.Max, strip, Alignment.MiddleRight, 4),
                new(shown.Min, strip, Alignment.MiddleLeft, 4),
            ],
            size: Lettering.Small
        );
    }
}
