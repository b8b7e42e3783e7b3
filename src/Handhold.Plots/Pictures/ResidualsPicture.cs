using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns residuals into a plot.</summary>
internal static class ResidualsPicture
{
    private const double Spread = 0.6; // stops over which the cells of one speed stand side by side
    private const double Widest = 0.12;

    public static Plot Draw(ResidualsScene scene)
    {
        Figure figure = new(scene.Palette);
        var (fastest, slowest) = (scene.Points.Min(p => p.Log2Seconds), scene.Points.Max(p => p.Log2Seconds));
        var most = Math.Max(3.2, 1.1 * scene.Points.Max(p => Math.Abs(p.Residual)));
        var step = most > 6 ? 5 : 1;
        figure.Frame(
            new AxisLimits(fastest - 0.7, slowest + 0.7, -most, most),
            ("Shutter speed (s)", new MarkedSpeedTicks(scene.Marks)),
            (
                "Residual",
                Figure.Ticks(
                    Enumerable
                        .Range(-(int)(most / step), 1 + (2 * (int)(most / step)))
                        .Select(i => ((double)(i * step), CurveWords.Signed(i * step)))
                )
            )
        );
        foreach (var (height, name) in new[] { (0.0, "as expected"), (-ResidualsScene.Usual, "usual"), (ResidualsScene.Usual, "usual") })
        {
            var pattern = height == 0 ? LinePattern.Solid : LinePattern.Dashed;
            figure.Line([fastest - 0.7, slowest + 0.7], [height, height], figure.Palette.Quiet, name, 1.5f, pattern);
        }

        foreach (var speed in scene.Points.GroupBy(p => p.Log2Seconds))
        {
            var apart = Math.Min(Widest, Spread / speed.Count());
            foreach (var (i, point) in speed.Index())
            {
                var x = point.Log2Seconds + (apart * (i - ((speed.Count() - 1) / 2.0)));
                figure.Point(x, point.Residual, MarkerShape.FilledCircle, 10, figure.Palette.Curve, hollow: !point.IsReliable);
                if (Math.Abs(point.Residual) > ResidualsScene.Usual)
                {
                    figure.Say(
                        point.Counts,
                        figure.Palette.Ink,
                        [
                            new(x, point.Residual, Alignment.MiddleLeft, 9),
                            new(x, point.Residual, Alignment.MiddleRight, 9),
                            new(x, point.Residual, Alignment.UpperCenter, 8),
                            new(x, point.Residual, Alignment.LowerCenter, 8),
                        ]
                    );
                }
            }
        }

        figure.Words(scene.Words);
        return figure.Finish();
    }
}
