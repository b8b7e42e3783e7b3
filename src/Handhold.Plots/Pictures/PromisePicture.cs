using ScottPlot;
using ScottPlot.TickGenerators;

namespace Handhold.Plots;

/// <summary>Turns promises against what was kept into a plot.</summary>
internal static class PromisePicture
{
    public static Plot Draw(PromiseScene scene)
    {
        Figure figure = new(scene.Palette);
        var left = Floor(scene.Points.Select(p => p.Promised).DefaultIfEmpty(0.8).Min() - 0.02);
        var bottom = Math.Min(left, Floor(scene.Points.Select(p => p.Lower).DefaultIfEmpty(0.5).Min()));
        figure.Frame(
            new AxisLimits(left, 1.02, bottom - (0.04 * (1 - bottom)), 1.06),
            ("Promised", Percents(left, 0.05)),
            ("Kept", Percents(bottom, bottom < 0.5 ? 0.2 : 0.1))
        );
        figure.Line([left, 1], [left, 1], figure.Palette.Target, "as promised", 2, LinePattern.Dashed);
        foreach (var point in scene.Points)
        {
            figure.Stroke(new(point.Promised, point.Lower), new(point.Promised, point.Upper), figure.Palette.Curve, 3, "interval");
            figure.Point(point.Promised, point.Share, MarkerShape.FilledCircle, 11, figure.Palette.Curve);
            figure.Say(
                $"{CurveWords.Number(point.Kept)} of {CurveWords.Number(point.Decided)}",
                figure.Palette.Ink,
                [
                    new(point.Promised, point.Share, Alignment.MiddleLeft, 10),
                    new(point.Promised, point.Share, Alignment.MiddleRight, 10),
                    new(point.Promised, point.Lower, Alignment.UpperCenter, 4),
                    new(point.Promised, point.Upper, Alignment.LowerCenter, 4),
                ]
            );
        }

        figure.Say(
            "as promised",
            figure.Palette.Target,
            Enumerable
                .Range(1, 9)
                .Select(i => left + (0.1 * i * (1 - left)))
                .SelectMany(at => new LabelSpot[] { new(at, at, Alignment.UpperLeft, 8), new(at, at, Alignment.LowerRight, 8) })
        );
        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static double Floor(double share) => Math.Clamp(Math.Floor(share * 10) / 10, 0, 0.9);

    private static NumericManual Percents(double from, double step) =>
        Figure.Ticks(
            Enumerable
                .Range((int)Math.Ceiling((from / step) - 1e-9), 1 + (int)Math.Round((1 - from) / step))
                .Select(i => i * step)
                .Where(share => share <= 1 + 1e-9)
                .Select(share => (share, CurveWords.Percent(Math.Round(share, 2))))
        );
}
