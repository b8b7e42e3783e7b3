using System.Globalization;

namespace Handhold;

/// <summary>Fitting again when more frames came home.</summary>
public static class RefitExtensions
{
    /// <summary>The same model fitted to the frames of a fit and more.</summary>
    /// <param name="curves">The fit.</param>
    /// <param name="more">New frames; those without a session are taken as shot on one new day.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="CellException">The rows cannot make curves together; the message names the curve, the value and the remedy.</exception>
    public static FittedCurves FitWith(
        this FittedCurves curves,
        FrameTable more,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(curves);
        ArgumentNullException.ThrowIfNull(more);
        FrameCell[] known = [.. curves.SelectMany(c => c.Data.Cells.Concat(c.Data.NotJudged))];
        var day = NewDay([.. known.Concat(more).Select(c => c.Conditions.Session)]);
        return curves.Model.Fit(
            [.. known, .. more.Select(c => c.Conditions.Session is null ? c with { Conditions = c.Conditions with { Session = day } } : c)],
            progress,
            cancellation
        );
    }

    private static string NewDay(HashSet<string?> taken)
    {
        var number = 1;
        while (taken.Contains(Label(number)))
            number++;
        return Label(number);

        static string Label(int number) => "new day " + number.ToString(CultureInfo.InvariantCulture);
    }
}
