using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns the curve of one level among others into a small plot.</summary>
internal static class LevelCurvePicture
{
    /// <summary>Where along the typical line its name may stand, best first.</summary>
    private static readonly ImmutableArray<double> s_places = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];

    public static Plot Draw(LevelCurveScene scene)
    {
        Figure figure = new(scene.Palette);
        var (xs, typical) = (scene.Log2Seconds, scene.Typical);
        figure.Frame(
            new AxisLimits(xs[0], xs[^1], -0.06, 1.06),
            ("Shutter speed (s)", new MarkedSpeedTicks(scene.Marks)),
            ("Keepers", Figure.Ticks(new[] { 0, 0.5, 1 }.Select(rate => (rate, CurveWords.Percent(rate)))))
        );
        figure.Band(xs, scene.Lower, scene.Upper);
        figure.Line(xs, typical, figure.Palette.Target, "typical", 2, LinePattern.Dashed);
        figure.Line(xs, scene.Rate, figure.Palette.Curve, "level");
        foreach (var observed in scene.Observed)
        {
            figure.Point(
                observed.Log2Seconds,
                observed.Rate,
                MarkerShape.FilledCircle,
                8,
                figure.Palette.Ink,
                hollow: scene.ConditionsDiffer
            );
        }

        if (scene.Half is { } half && half > xs[0] && half < xs[^1])
        {
            figure.Point(half, 0.5, MarkerShape.FilledDiamond, 12, figure.Palette.Curve);
        }

        figure.Say(
            "typical",
            figure.Palette.Target,
            s_places
                .Select(share => (int)(share * (xs.Length - 1)))
                .SelectMany(k =>
                    new LabelSpot[] { new(xs[k], typical[k], Alignment.LowerLeft, 5), new(xs[k], typical[k], Alignment.UpperRight, 5) }
                ),
            size: Lettering.Small
        );
        figure.Words(scene.Words);
        return figure.Finish();
    }
}
