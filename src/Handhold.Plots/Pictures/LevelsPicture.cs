using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns half-keeper exposures of levels into a plot.</summary>
internal static class LevelsPicture
{
    private const int MostNamed = 24;

    /// <summary>Stops beyond the speeds tested where an open or long interval ends in an arrow.</summary>
    private const double Beyond = 2;

    public static Plot Draw(LevelsScene scene)
    {
        Figure figure = new(scene.Palette);
        var rows = scene.Rows;
        var (low, high) = (
            Math.Floor(
                Math.Min(rows[0].Half, Math.Max(rows.Min(r => r.Lower ?? double.NegativeInfinity), scene.Tested.Fastest - Beyond)) - 0.3
            ),
            Math.Ceiling(
                Math.Max(rows[^1].Half, Math.Min(rows.Max(r => r.Upper ?? double.PositiveInfinity), scene.Tested.Slowest + Beyond)) + 0.3
            )
        );
        var (every, top) = ((rows.Length + MostNamed - 1) / MostNamed, rows.Length + Math.Max(0.4, rows.Length * 0.08));
        figure.Frame(
            new AxisLimits(low, high, -0.6, top),
            ("Half-keeper speed (s)", new MarkedSpeedTicks(scene.Marks)),
            (Capital(scene.Column), Figure.Ticks(rows.Index().Where(r => r.Index % every == 0).Select(r => ((double)r.Index, r.Item.Name))))
        );
        if (scene.Typical is { } typical && typical > low && typical < high)
        {
            figure.Stroke(new(typical, -0.6), new(typical, top), figure.Palette.Target, 2, "typical");
            figure.Say(
                $"a typical {scene.Column}: {CurveWords.Speed(typical, scene.Marks)}",
                figure.Palette.Target,
                [
                    new(typical, top, Alignment.UpperLeft, 6),
                    new(typical, top, Alignment.UpperRight, 6),
                    new(typical, -0.6, Alignment.LowerLeft, 6),
                    new(typical, -0.6, Alignment.LowerRight, 6),
                ]
            );
        }

        var (width, size) = rows.Length > MostNamed ? (1.5f, 5f) : (3f, 11f);
        foreach (var (i, row) in rows.Index())
        {
            figure.Interval(i, row.Lower, row.Upper, (low, high), width);
            figure.Point(row.Half, i, MarkerShape.FilledCircle, size, figure.Palette.Curve, row.IsMostlyBorrowed);
        }

        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
