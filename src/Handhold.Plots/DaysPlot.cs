using ScottPlot;

namespace Handhold.Plots;

/// <summary>Draws the luck of days, and whether they show progress.</summary>
public static class DaysPlot
{
    /// <summary>A point a day in the order of labels: its luck with its interval, beside the line of a usual day.</summary>
    /// <remarks>It computes nothing: it draws <see cref="DaysAnswer"/>. Axes: days; stops, up is a day on which slower speeds would do.</remarks>
    /// <param name="answer">What <c>curve.Days()</c> found.</param>
    /// <param name="options">How to draw; <see cref="PictureOptions.Default"/> when null.</param>
    /// <returns>A plot of the caller's own.</returns>
    public static Plot Draw(DaysAnswer answer, PictureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return DaysPicture.Draw(DaysScene.Of(answer, options ?? PictureOptions.Default));
    }
}
