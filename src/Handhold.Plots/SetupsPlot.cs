using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws the keeper curves of several setups over each other.</summary>
public static class SetupsPlot
{
    /// <summary>Curves that can be told apart in one picture.</summary>
    public const int MostCurves = 6;

    /// <summary>Median curves, each with a letter, and below them the exposure that has the wanted rate, with its interval.</summary>
    /// <remarks>It computes nothing: it draws what the curves answer. Axes: log2 of the exposure time in seconds; keeper rate, 0 to 1; below 0 a strip a curve.</remarks>
    /// <param name="curves">Two to six curves; draw more one by one and lay them out with <see cref="PictureSheet"/>.</param>
    /// <param name="rate">The keeper rate whose exposures are marked, above 0 and below 1.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentException">There are too few or too many curves, or the rate is not above 0 and below 1.</exception>
    public static Plot Draw(IEnumerable<KeeperCurve> curves, double rate = 0.5, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curves);
        ImmutableArray<KeeperCurve> all = [.. curves];
        return all.Length is < 2 or > MostCurves
            ? throw new ArgumentException(
                $"One picture overlays 2 to {CurveWords.Number(MostCurves)} curves; there are {CurveWords.Number(all.Length)}. Draw one a picture, or a sheet of them.",
                nameof(curves)
            )
            : SetupsPicture.Draw(SetupsScene.Of(all, rate, options ?? PictureOptions.Default));
    }
}
