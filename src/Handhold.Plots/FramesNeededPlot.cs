using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws the frames needed against the shutter speed, for one, two and three keepers, with the line from where on a support is called for.</summary>
public static class FramesNeededPlot
{
    /// <summary>Frames needed at the marked full stops tested and the next one.</summary>
    /// <remarks>
    /// It computes nothing: it draws what the curve answers. Axes: log2 of the exposure time in seconds; log2 of the frames. Speeds that take more frames than
    /// the budget of the options are left out, and the budget is drawn as a line.
    /// </remarks>
    /// <param name="curve">The fitted curve.</param>
    /// <param name="assurance">How sure to be of the keepers, above 0 and below 1.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentException">The assurance is not above 0 and below 1.</exception>
    public static Plot Draw(
        KeeperCurve curve,
        double assurance = 0.95,
        PictureOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(curve);
        return FramesPicture.Draw(FramesScene.Of(curve, assurance, options ?? PictureOptions.Default, cancellation));
    }
}
