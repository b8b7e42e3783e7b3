using System.Collections.Immutable;
using System.Globalization;

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
    public static LevelsScene Of(KeeperCurve curve, GroupSpread group, PictureOptions options)
    {
        var (marks, column) = (options.Answers.Marks, group.Varying.Column);
        ImmutableArray<LevelRow> rows = [.. group.Levels.Select(Row).OfType<LevelRow>().OrderBy(r => r.Half)];
        if (rows.IsEmpty)
        {
            throw new ArgumentException($"No {column} has a half-keeper speed, so there is nothing to draw.", nameof(group));
        }

        var typical = Typically(curve, options).Exposure?.Log2Seconds;
        var left = group.Levels.Length - rows.Length;
        return new LevelsScene(
            new PictureWords(
                options.Title ?? Finding(group, rows, marks),
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

    /// <summary>The levels of a column, or of the first that varies.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static GroupSpread Group(KeeperCurve curve, string? column)
    {
        var groups = curve.Linear?.Groups ?? [];
        return groups.IsEmpty
                ? throw new ArgumentException(
                    "No levels vary in this curve: fit it with --varies, such as --varies photographer.",
                    nameof(curve)
                )
            : column is null ? groups[0]
            : groups.FirstOrDefault(g => g.Varying.Column == column)
                ?? throw new ArgumentException(
                    $"{column} does not vary in this curve: {string.Join(" and ", groups.Select(g => g.Varying.Column))} {(groups.Length == 1 ? "does" : "do")}.",
                    nameof(column)
                );
    }

    /// <summary>The half-keeper exposure of a typical level.</summary>
    public static ExposureAnswer Typically(KeeperCurve curve, PictureOptions options) =>
        curve.HalfKeeperExposure(AnswerOptions.OfReport(curve) with { Marks = options.Answers.Marks });

    /// <summary>"1/60 s to 1/15 s", from the side that is open "no limit".</summary>
    private static string Ends(LevelRow row, Marks marks) =>
        $"{(row.Lower is { } lower ? CurveWords.Speed(lower, marks) : "no limit")} to {(row.Upper is { } upper ? CurveWords.Speed(upper, marks) : "no limit")}";

    private static LevelRow? Row(GroupLevel level) =>
        level.HalfKeeperExposure is { } half
            ? new LevelRow(
                level.ToString(),
                half.Log2Seconds,
                level.HalfKeeperSet.Pieces.IsEmpty ? null : level.HalfKeeperSet.Pieces[0].Lower,
                level.HalfKeeperSet.Pieces.IsEmpty ? null : level.HalfKeeperSet.Pieces[^1].Upper,
                level.Borrowed
            )
            : null;

    private static string Finding(GroupSpread group, ImmutableArray<LevelRow> rows, Marks marks)
    {
        var column = group.Varying.Column;
        return group.Spreads.All(s => s.Estimate == 0) || rows.Length == 1
                ? $"One {column} differs from another no more than chance makes them"
            : rows[0] is var first && rows[^1] is var last && CurveWords.Speed(first.Half, marks) != CurveWords.Speed(last.Half, marks)
                ? $"Half the frames are keepers at {CurveWords.Speed(first.Half, marks)} with {first.Name}, at {CurveWords.Speed(last.Half, marks)} with {last.Name}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"Half-keeper speeds of every {column} lie within a mark of {CurveWords.Speed(rows[0].Half, marks)}"
            );
    }
}
