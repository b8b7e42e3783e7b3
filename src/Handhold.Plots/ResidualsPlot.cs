using Handhold.Diagnostics;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws randomised-quantile residuals against shutter speed.</summary>
public static class ResidualsPlot
{
    /// <summary>A point for each cell, between lines at two standard deviations; hollow where it is not reliable.</summary>
    /// <remarks>It computes nothing: it draws <see cref="CellCheck.Residual"/>. Axes: log2 of the exposure time in seconds, normal deviates; cells of one speed stand side by side.</remarks>
    /// <param name="checks">The checks of a curve.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentException">No cell has a residual.</exception>
    public static Plot Draw(CurveChecks checks, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(checks);
        return checks.Cells.All(c => c.Residual is null)
            ? throw new ArgumentException(
                "No cell has a residual: left out, each leaves nothing finite. Fit the posterior or bias-reduced.",
                nameof(checks)
            )
            : ResidualsPicture.Draw(ResidualsScene.Of(checks, options ?? PictureOptions.Default));
    }
}
