using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws how many keepers a planned shoot will bring, in one burst and in several.</summary>
public static class KeeperCountPlot
{
    /// <summary>The predictive distribution of the keepers, all frames in one burst beside the same frames in bursts with a fresh grip each.</summary>
    /// <remarks>It computes nothing: it draws what the curve answers. Axes: keepers; probability, 0 to 1, with ticks in percent.</remarks>
    /// <param name="curve">The fitted curve.</param>
    /// <param name="at">The shutter speed.</param>
    /// <param name="frames">Frames planned, 1 to 100.</param>
    /// <param name="burstsOf">Frames a burst, 1 up to <paramref name="frames"/>.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null. Its bursts are not used.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Frames or burst are out of range.</exception>
    public static Plot Draw(
        KeeperCurve curve,
        ShutterSpeed at,
        int frames,
        int burstsOf,
        PictureOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(curve);
        if (frames is < 1 or > 100)
        {
            throw new ArgumentOutOfRangeException(nameof(frames), frames, "A picture has room for 1 to 100 frames.");
        }

        if (burstsOf < 1 || burstsOf > frames)
        {
            throw new ArgumentOutOfRangeException(nameof(burstsOf), burstsOf, "A burst has at least one frame, and no more than the plan.");
        }

        return CountPicture.Draw(CountScene.Of(curve, at, frames, burstsOf, options ?? PictureOptions.Default, cancellation));
    }
}
