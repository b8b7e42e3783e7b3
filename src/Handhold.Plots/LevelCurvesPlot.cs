using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws the keeper curve of each level that was fitted together with others: small multiples.</summary>
public static class LevelCurvesPlot
{
    /// <summary>Curves on one sheet.</summary>
    public const int MostLevels = 60;

    /// <summary>A plot a level, in the order of half-keeper exposures: its curve with its interval and what was observed, before the curve of a typical level; all on the same axes.</summary>
    /// <remarks>It computes nothing: it draws <see cref="FittedLevel"/>. Lay the plots out with <see cref="PictureSheet"/>. Axes: log2 of the exposure time in seconds; keeper rate, 0 to 1.</remarks>
    /// <param name="curve">A curve in which levels vary.</param>
    /// <param name="column">The column whose levels are meant; null for the first that varies.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>Plots of the caller's own.</returns>
    /// <exception cref="ArgumentException">No levels vary, or not those of the column, or they are more than <see cref="MostLevels"/>.</exception>
    public static ImmutableArray<Plot> Draw(KeeperCurve curve, string? column = null, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var group = LevelGroup.Of(curve, column);
        return group.Levels.Length > MostLevels
            ? throw new ArgumentException(
                $"A sheet shows the curves of at most {CurveWords.Number(MostLevels)} levels; there are {CurveWords.Number(group.Levels.Length)} of {group.Column}. Draw their half-keeper speeds instead.",
                nameof(column)
            )
            : [.. LevelCurveScene.Of(curve, group, options ?? PictureOptions.Default).Select(LevelCurvePicture.Draw)];
    }
}
