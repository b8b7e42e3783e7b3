using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws a fitted keeper curve against marked shutter speeds.</summary>
public static class KeeperCurvePlot
{
    /// <summary>Median curve and band, observed rates with Wilson intervals, and the exposure that has the target rate, with its interval.</summary>
    /// <remarks>
    /// It computes nothing: it draws what the curve answers. Axes: log2 of the exposure time in seconds, with ticks at marked speeds;
    /// keeper rate, 0 to 1, with ticks in percent. Text is wrapped, and labels find their places, when the plot is rendered, at any size.
    /// </remarks>
    /// <param name="curve">The fitted curve.</param>
    /// <param name="options">What to show; <see cref="KeeperCurvePlotOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own, to restyle, embed, or write by <see cref="PlotPicture.SavePicture"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target rate is not above 0 and below 1.</exception>
    public static Plot Draw(KeeperCurve curve, KeeperCurvePlotOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return CurveDrawing.Draw(CurveScene.Of(curve, options ?? KeeperCurvePlotOptions.Default));
    }
}
