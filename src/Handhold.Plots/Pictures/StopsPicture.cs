using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns changes in stops into a plot.</summary>
internal static class StopsPicture
{
    private static readonly ImmutableArray<int> s_steps = [1, 2, 5, 10];

    public static Plot Draw(StopsScene scene)
    {
        Figure figure = new(scene.Palette);
        var values = scene.Rows.SelectMany(r => new[] { r.Stops, r.Lower, r.Upper, r.Rated }).OfType<double>().Append(0).ToArray();
        var (low, high) = (Math.Max(-20, Math.Floor(values.Min() - 0.25)), Math.Min(20, Math.Ceiling(values.Max() + 0.25)));
        var step = s_steps.First(s => (high - low) / s <= 12);
        figure.Frame(
            new AxisLimits(low, high, -0.5, scene.Rows.Length - 0.4),
            (
                "Stops",
                Figure.Ticks(
                    Enumerable
                        .Range((int)Math.Ceiling(low / step), 1 + (int)Math.Floor((high - low) / step))
                        .Select(i => ((double)(i * step), CurveWords.Signed(i * step)))
                )
            ),
            ("Term", Figure.Ticks(scene.Rows.Select((r, i) => ((double)Y(scene, i), r.Name))))
        );
        figure.Stroke(new(0, -0.5), new(0, scene.Rows.Length - 0.4), figure.Palette.Quiet, 1.5f, "no change");
        foreach (var (i, row) in scene.Rows.Index())
        {
            DrawRow(figure, row, Y(scene, i), low, high);
        }

        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static int Y(StopsScene scene, int i) => scene.Rows.Length - 1 - i;

    private static void DrawRow(Figure figure, StopsRow row, double y, double low, double high)
    {
        var color = figure.Palette.Curve;
        var (from, to) = (Math.Max(row.Lower ?? low, low), Math.Min(row.Upper ?? high, high));
        figure.Interval(y, row.Lower, row.Upper, (low, high), 4);
        if (row.Rated is { } rated)
        {
            figure.Point(rated, y, MarkerShape.FilledDiamond, 13, figure.Palette.Target, hollow: true);
        }

        if (row.Stops is { } stops)
        {
            figure.Point(stops, y, MarkerShape.FilledCircle, 11, color);
        }

        figure.Say(
            StopsScene.Value(row),
            figure.Palette.Ink,
            [
                new((from + to) / 2, y, Alignment.LowerCenter, 9),
                new(from, y, Alignment.LowerLeft, 9),
                new(to, y, Alignment.LowerRight, 9),
                new(to, y, Alignment.MiddleLeft, 12),
                new(from, y, Alignment.MiddleRight, 12),
                new(0, y, Alignment.MiddleLeft, 6),
                new((from + to) / 2, y, Alignment.UpperCenter, 9),
                new(from, y, Alignment.UpperLeft, 9),
                new(to, y, Alignment.UpperRight, 9),
            ]
        );
    }
}
