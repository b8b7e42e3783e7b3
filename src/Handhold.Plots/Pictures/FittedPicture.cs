using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns observed against fitted rates into a plot.</summary>
internal static class FittedPicture
{
    private const double Widest = 0.14; // stops between the marks of one speed

    public static Plot Draw(FittedScene scene)
    {
        Figure figure = new(scene.Palette);
        double[] at = [.. scene.Speeds.Select(s => s.Log2Seconds)];
        var apart = Math.Min(Widest, at.Skip(1).Zip(at, (slower, faster) => (slower - faster) / 4).DefaultIfEmpty(1).Min());
        figure.Frame(
            new AxisLimits(at[0] - 0.7, at[^1] + 0.7, -0.06, 1.1),
            ("Shutter speed (s)", new MarkedSpeedTicks(scene.Marks)),
            ("Keeper rate", Figure.Ticks(Enumerable.Range(0, 6).Select(i => (i / 5.0, CurveWords.Percent(i / 5.0)))))
        );
        foreach (var speed in scene.Speeds)
        {
            var x = speed.Log2Seconds;
            figure.Stroke(new(x - apart, speed.Lower), new(x - apart, speed.Upper), figure.Palette.Quiet, 2, "interval");
            figure.Point(x - apart, speed.Rate, MarkerShape.FilledCircle, 12, figure.Palette.Ink);
            if (speed.Fitted is { } fitted)
            {
                figure.Point(x, fitted, MarkerShape.FilledDiamond, 13, figure.Palette.Curve);
            }

            if (speed.Expected is { } expected)
            {
                figure.Point(x + apart, expected, MarkerShape.FilledSquare, 10, figure.Palette.Target, hollow: true);
            }
        }

        if (scene.Farthest is { } farthest)
        {
            var x = farthest.Log2Seconds;
            figure.Say(
                FittedScene.Points(farthest),
                figure.Palette.Ink,
                new[] { farthest.Rate, farthest.Lower, farthest.Upper }.SelectMany(y =>
                    new LabelSpot[]
                    {
                        new(x - apart, y, Alignment.MiddleRight, 12),
                        new(x + apart, y, Alignment.MiddleLeft, 12),
                        new(x - apart, y, Alignment.UpperCenter, 8),
                        new(x - apart, y, Alignment.LowerCenter, 8),
                    }
                ),
                bold: true
            );
        }

        figure.Words(scene.Words);
        return figure.Finish();
    }
}
