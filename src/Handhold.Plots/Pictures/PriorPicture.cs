using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns prior and posterior into a plot.</summary>
internal static class PriorPicture
{
    public static Plot Draw(PriorScene scene)
    {
        Figure figure = new(scene.Palette);
        var (prior, posterior) = (scene.Prior, scene.Posterior);
        var low = Math.Min(prior.Mean - (2 * prior.Deviation), posterior.Mean - (2 * posterior.Deviation)) - 0.5;
        var high = Math.Max(prior.Mean + (2 * prior.Deviation), posterior.Mean + (2 * posterior.Deviation)) + 0.5;
        figure.Frame(
            new AxisLimits(low, high, -0.6, 1.6),
            ("Shutter speed (s)", new MarkedSpeedTicks(scene.Marks)),
            ("Half point", Figure.Ticks([(1, "before the frames\n(prior)"), (0, "after them\n(posterior)")]))
        );
        Row(figure, prior, 1, figure.Palette.Quiet, MarkerShape.FilledSquare, scene.Marks);
        Row(figure, posterior, 0, figure.Palette.Curve, MarkerShape.FilledCircle, scene.Marks);
        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static void Row(Figure figure, (double Mean, double Deviation) half, double y, Color color, MarkerShape shape, Marks marks)
    {
        figure.Stroke(
            new(half.Mean - (2 * half.Deviation), y),
            new(half.Mean + (2 * half.Deviation), y),
            color,
            2,
            "two standard deviations"
        );
        figure.Stroke(new(half.Mean - half.Deviation, y), new(half.Mean + half.Deviation, y), color, 8, "one standard deviation");
        figure.Point(half.Mean, y, shape, 14, color);
        figure.Say(
            CurveWords.Speed(half.Mean, marks),
            color,
            [new(half.Mean, y, Alignment.LowerCenter, 12), new(half.Mean, y, Alignment.UpperCenter, 12)],
            bold: true
        );
    }
}
