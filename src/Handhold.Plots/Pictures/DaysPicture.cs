using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns the luck of days into a plot.</summary>
internal static class DaysPicture
{
    private const int MostNamed = 8;

    public static Plot Draw(DaysScene scene)
    {
        Figure figure = new(scene.Palette);
        var days = scene.Days;
        var (low, high) = (Math.Floor((days.Min(d => d.Lower) * 2) - 0.2) / 2, Math.Ceiling((days.Max(d => d.Upper) * 2) + 0.2) / 2);
        var step = high - low > 4 ? 1 : 0.5;
        var every = (days.Length + MostNamed - 1) / MostNamed;
        figure.Frame(
            new AxisLimits(-0.6, days.Length - 0.4, low, high),
            ("Day", Figure.Ticks(days.Index().Where(d => d.Index % every == 0).Select(d => ((double)d.Index, d.Item.Name)))),
            (
                "Stops",
                Figure.Ticks(
                    Enumerable
                        .Range((int)Math.Ceiling(low / step), 1 + (int)Math.Floor((high - low) / step))
                        .Select(i => (i * step, CurveWords.Signed(i * step)))
                )
            )
        );
        figure.Stroke(new(-0.6, 0), new(days.Length - 0.4, 0), figure.Palette.Target, 2, "a usual day");
        foreach (var (i, day) in days.Index())
        {
            figure.Stroke(new(i, day.Lower), new(i, day.Upper), figure.Palette.Curve, 3, "interval");
            figure.Point(i, day.Stops, MarkerShape.FilledCircle, 11, figure.Palette.Curve);
            figure.Say(
                CurveWords.Signed(day.Stops),
                figure.Palette.Ink,
                [
                    new(i, day.Stops, Alignment.MiddleLeft, 10),
                    new(i, day.Stops, Alignment.MiddleRight, 10),
                    new(i, day.Upper, Alignment.LowerCenter, 4),
                ]
            );
        }

        figure.Say(
            "a usual day",
            figure.Palette.Target,
            Enumerable
                .Range(0, days.Length + 1)
                .Select(i => i - 0.5)
                .SelectMany(x =>
                    new LabelSpot[]
                    {
                        new(x, 0, Alignment.LowerLeft, 4),
                        new(x, 0, Alignment.UpperLeft, 4),
                        new(x, 0, Alignment.LowerCenter, 4),
                    }
                )
        );
        figure.Words(scene.Words);
        return figure.Finish();
    }
}
