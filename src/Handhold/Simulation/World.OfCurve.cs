namespace Handhold.Simulation;

public sealed partial record World
{
    /// <summary>The world in which a fitted curve is the truth: its posterior medians, those of the luck among them, at its reference conditions.</summary>
    /// <param name="curve">A curve with a posterior.</param>
    /// <exception cref="ArgumentException">The curve has no posterior.</exception>
    public static World Of(KeeperCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var shape =
            curve.MedianShape
            ?? throw new ArgumentException(
                $"Curve {curve.Key} was estimated by {curve.Estimator}, which knows no luck to shoot with. Fit it with Estimator.Posterior.",
                nameof(curve)
            );
        double Median(string name) => curve.Parameters.FirstOrDefault(p => p.Name == name)?.Median ?? 0;
        return new()
        {
            HalfPoint = shape.HalfPoint,
            Steepness = shape.Steepness,
            Ceiling = shape.Ceiling,
            Floor = shape.Floor,
            SessionLuck = Median("sessionLuck"),
            BurstLuck = Median("burstLuck"),
        };
    }
}
