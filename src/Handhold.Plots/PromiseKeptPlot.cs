using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws how often plans were kept against how often they were promised to be.</summary>
public static class PromiseKeptPlot
{
    /// <summary>A point for each assurance asked for: mean promise, share kept and its interval, beside the line where both agree.</summary>
    /// <remarks>It computes nothing: it draws <see cref="KeptReport.ByAssurance"/>. Axes: promised and kept, 0 to 1, with ticks in percent.</remarks>
    /// <param name="report">What came home.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    public static Plot Draw(KeptReport report, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        return PromisePicture.Draw(PromiseScene.Of(report, options ?? PictureOptions.Default));
    }
}
