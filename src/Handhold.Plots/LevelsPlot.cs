using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws where photographers, setups or other levels that were fitted together stand.</summary>
public static class LevelsPlot
{
    /// <summary>A row a level in the order of half-keeper exposures, each with its interval, beside the line of a typical level.</summary>
    /// <remarks>It computes nothing: it draws <see cref="LinearFit.Groups"/>, or a posterior's <see cref="KeeperCurve.Levels"/>. Axes: log2 of the exposure time in seconds; levels, the one of the slowest speeds on top.</remarks>
    /// <param name="curve">A curve in which levels vary.</param>
    /// <param name="column">The column whose levels are meant; null for the first that varies.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    /// <exception cref="ArgumentException">No levels vary, or not those of the column, or none has a half-keeper exposure.</exception>
    public static Plot Draw(KeeperCurve curve, string? column = null, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return LevelsPicture.Draw(LevelsScene.Of(curve, LevelGroup.Of(curve, column), options ?? PictureOptions.Default));
    }
}
