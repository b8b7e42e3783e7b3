using Handhold.Diagnostics;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws observed keeper rates against the fitted ones and those that the other speeds lead to expect.</summary>
public static class FittedRatesPlot
{
    /// <summary>A column a speed: what was observed with its interval, what was fitted, what the other speeds expect; the farthest gap in points.</summary>
    /// <remarks>It computes nothing: it draws <see cref="CurveChecks.Speeds"/>. Axes: log2 of the exposure time in seconds, keeper rate from 0 to 1.</remarks>
    /// <param name="checks">The checks of a curve.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    public static Plot Draw(CurveChecks checks, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(checks);
        return FittedPicture.Draw(FittedScene.Of(checks, options ?? PictureOptions.Default));
    }
}
