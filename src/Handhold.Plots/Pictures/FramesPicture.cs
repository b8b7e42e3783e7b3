using System.Globalization;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns frames needed into a plot.</summary>
internal static class FramesPicture
{
    private static MarkerShape Shape(int series) =>
        series switch
        {
            0 => MarkerShape.FilledCircle,
            1 => MarkerShape.FilledSquare,
            _ => MarkerShape.FilledTriangleUp,
        };

    public static Plot Draw(FramesScene scene)
    {
        Figure figure = new(scene.Palette);
        var most = Math.Log2(scene.Budget);
        var highest = scene.Series.SelectMany(s => s).Select(p => Math.Log2(p.Frames)).DefaultIfEmpty(0).Max();
        var top = scene.PassesBudget ? most + 1 : highest + 1;
        var frames = Enumerable.Range(0, 1 + (int)Math.Floor(top)).Select(i => 1 << i);
        figure.Frame(
            new AxisLimits(scene.Shown.Fastest, scene.Shown.Slowest, -0.6, top),
            ("Shutter speed (s)", new MarkedSpeedTicks(Marks.Full)),
            ("Frames", Figure.Ticks(frames.Select(f => (Math.Log2(f), f.ToString(CultureInfo.InvariantCulture)))))
        );
        if (scene.PassesBudget)
        {
            figure.Stroke(new(scene.Shown.Fastest, most), new(scene.Shown.Slowest, most), figure.Palette.Target, 1.5f, "support");
            figure.Say(
                $"use a support: more than {CurveWords.Count(scene.Budget, "frame")}",
                figure.Palette.Target,
                [new(scene.Shown.Fastest, most, Alignment.LowerLeft), new(scene.Shown.Slowest, most, Alignment.LowerRight)],
                bold: true
            );
        }

        foreach (var (i, points) in scene.Series.Index())
        {
            DrawSeries(figure, i, points);
        }

        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static void DrawSeries(Figure figure, int series, System.Collections.Immutable.ImmutableArray<FramesPoint> points)
    {
        if (points.IsEmpty)
        {
            return;
        }

        var color = figure.Palette.Series[series];
        var (xs, ys) = (points.Select(p => p.Log2Seconds).ToArray(), points.Select(p => Math.Log2(p.Frames)).ToArray());
        var name = CurveWords.Count(series + 1, "keeper");
        figure.Line(xs, ys, color, name, 2);
        foreach (var (x, y, point) in points.Select((p, i) => (xs[i], ys[i], p)))
        {
            figure.Point(x, y, Shape(series), 11, color, hollow: point.RestsOnPrior);
        }

        figure.Say(
            $"{name}: {CurveWords.Number(points[^1].Frames)}",
            color,
            [
                new(xs[^1], ys[^1], Alignment.MiddleLeft, 9),
                new(xs[^1], ys[^1], Alignment.LowerCenter, 9),
                .. Enumerable
                    .Range(0, xs.Length)
                    .Reverse()
                    .SelectMany(i =>
                        new LabelSpot[] { new(xs[i], ys[i], Alignment.LowerRight, 7), new(xs[i], ys[i], Alignment.UpperLeft, 8) }
                    ),
            ],
            bold: true
        );
        foreach (var (x, y, point) in points.SkipLast(1).Select((p, i) => (xs[i], ys[i], p)))
        {
            figure.Say(
                CurveWords.Number(point.Frames),
                color,
                [
                    new(x, y, Alignment.LowerCenter, 8),
                    new(x, y, Alignment.LowerRight, 7),
                    new(x, y, Alignment.UpperLeft, 7),
                    new(x, y, Alignment.UpperCenter, 8),
                ],
                size: Lettering.Small
            );
        }
    }
}
