using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws what each thing buys or costs, in stops.</summary>
public static class InStopsPlot
{
    /// <summary>A row a term: the change of the exposure with its interval, and beside a stabiliser its rating.</summary>
    /// <remarks>It computes nothing: it draws <see cref="KeeperCurve.InStops"/>. Axis: stops; to the right slower speeds are allowed.</remarks>
    /// <param name="curve">A curve fitted with terms.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentException">The curve has no terms that can be told in stops.</exception>
    public static Plot Draw(KeeperCurve curve, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return curve.InStops.IsEmpty
            ? throw new ArgumentException("The curve has no terms to tell in stops: fit it with terms such as stabiliser.", nameof(curve))
            : StopsPicture.Draw(StopsScene.Of(curve, options ?? PictureOptions.Default));
    }
}
