using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws what was believed of the half point before the frames, against what is believed after them.</summary>
public static class PriorPlot
{
    /// <summary>Mean and one and two standard deviations of the half point in the prior, and in the posterior.</summary>
    /// <remarks>It computes nothing: it draws <see cref="KeeperCurve.HalfPointPrior"/> and the parameter <c>tau0</c>. Axis: log2 of the exposure time in seconds.</remarks>
    /// <param name="curve">A curve with a posterior.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentException">The curve has no posterior.</exception>
    public static Plot Draw(KeeperCurve curve, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return curve.HalfPointPrior is { } prior && curve.Parameters.FirstOrDefault(p => p.Name == "tau0") is { } posterior
            ? PriorPicture.Draw(PriorScene.Of(curve, prior, posterior, options ?? PictureOptions.Default))
            : throw new ArgumentException(
                $"A curve estimated by {curve.Estimator} has no prior: fit it with the posterior estimator.",
                nameof(curve)
            );
    }
}
