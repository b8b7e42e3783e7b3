using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>Everything a picture of levels shows: the one of the fastest speeds first.</summary>
internal sealed record LevelsScene(
    PictureWords Words,
    string Column,
    ImmutableArray<LevelRow> Rows,
    double? Typical,
    (double Fastest, double Slowest) Tested,
    Marks Marks,
    Palette Palette
)
{
    /// <exception cref="ArgumentException">None of the levels has a half-keeper exposure.</exception>
    public static LevelsScene Of(KeeperCurve curve, LevelGroup group, PictureOptions options)
    {
        var (marks, column, rows) = (options.Answers.Marks, group.Column, group.Rows());
        if (rows.IsEmpty)
            throw new ArgumentException($"No {column} has a half-keeper speed, so there is nothing to draw.", nameof(group));
        var typical = curve.HalfKeeperExposure(AnswerOptions.OfReport(curve)).Exposure?.Log2Seconds;
        var left = group.Levels.Length - rows.Length;
        return new LevelsScene(
            new PictureWords(
                options.Title ?? Finding(column, rows, group.AreAlike, marks),
                PictureWords.Name(curve),
                [
                    CurveWords.Data(curve),
                    $"Half-keeper speeds with {CurveWords.Percent(curve.Model.Level)} intervals; hollow: more than half is borrowed from the others. {CurveWords.Source(curve, options.Answers, "For")}.",
                    left == 0 ? "" : $"{CurveWords.Count(left, column)} without a half-keeper speed {(left == 1 ? "is" : "are")} left out.",
                ],
                $"Half-keeper speed of each {column}. "
                    + string.Join(
                        " ",
                        rows.Select(r =>
                            $"{r.Name}: {CurveWords.Speed(r.Half, marks)} ({Ends(r, marks)}), {CurveWords.WholePercent(r.Borrowed)} borrowed."
                        )
                    )
                    + (typical is { } half ? $" A typical {column}: {CurveWords.Speed(half, marks)}." : "")
            ),
            column,
            rows,
            typical,
            (curve.Data.Fastest.Log2Seconds, curve.Data.Slowest.Log2Seconds),
            marks,
            Palette.Of(options.Theme)
        );
    }

    /// <summary>"1/60 s to 1/15 s", from the side that is open "no limit".</summary>
    private static string Ends(LevelRow row, Marks marks) =>
        $"{(row.Lower is { } lower ? CurveWords.Speed(lower, marks) : "no limit")} to {(row.Upper is { } upper ? CurveWords.Speed(upper, marks) : "no limit")}";

    private static string Finding(string column, ImmutableArray<LevelRow> rows, bool areAlike, Marks marks)
    {
        var (first, last) = (rows[0], rows[^1]);
        var (fastest, slowest) = (CurveWords.Speed(first.Half, marks), CurveWords.Speed(last.Half, marks));
        return areAlike || first == last ? $"One {column} differs from another no more than chance makes them"
            : fastest != slowest ? $"Half the frames are keepers at {fastest} with {first.Name}, at {slowest} with {last.Name}"
            : $"Half-keeper speeds of every {column} lie within a mark of {fastest}";
    }
}
