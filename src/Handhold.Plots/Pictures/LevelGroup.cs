using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>The levels of one column that were fitted together, by either estimator.</summary>
/// <param name="Column">The column.</param>
/// <param name="Levels">How many levels there are.</param>
/// <param name="Rows">Those with a half-keeper exposure, the fastest first.</param>
/// <param name="AreAlike">Whether their spread is estimated as none.</param>
internal sealed record LevelGroup(string Column, int Levels, ImmutableArray<LevelRow> Rows, bool AreAlike)
{
    /// <summary>The levels of a column, or of the first that varies.</summary>
    /// <exception cref="ArgumentException">There are none, or none has a half-keeper exposure.</exception>
    public static LevelGroup Of(KeeperCurve curve, string? column)
    {
        var group = curve.Linear is { } linear
            ? Of(Chosen(Speeds(linear), g => g.Varying.Column, column))
            : Of(Chosen([.. curve.Levels.Where(g => g.Varying.Term is null)], g => g.Varying.Column, column));
        return group.Rows.IsEmpty
            ? throw new ArgumentException($"No {group.Column} has a half-keeper speed, so there is nothing to draw.", nameof(column))
            : group;
    }

    /// <summary>The group of a column, or the first.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static T Chosen<T>(ImmutableArray<T> groups, Func<T, string> columnOf, string? column)
        where T : class =>
        groups.IsEmpty
            ? throw new ArgumentException(
                "No half-keeper speeds of levels vary in this curve: fit it with --varies, such as --varies photographer=intercept.",
                nameof(groups)
            )
        : column is null ? groups[0]
        : groups.FirstOrDefault(g => columnOf(g) == column)
            ?? throw new ArgumentException(
                $"{column} does not vary in this curve, which has levels of {string.Join(" and ", groups.Select(columnOf))}.",
                nameof(column)
            );

    /// <summary>The groups whose half-keeper speeds vary, rather than what a term buys.</summary>
    public static ImmutableArray<GroupSpread> Speeds(LinearFit linear) => [.. linear.Groups.Where(g => g.Varying.Term is null)];

    private static LevelGroup Of(GroupSpread group) => Of(group.Varying, group.Levels, group.Spreads.All(s => s.Estimate == 0));

    private static LevelGroup Of(VaryingLevels group) => Of(group.Varying, group.Levels, areAlike: false);

    private static LevelGroup Of(Varying varying, IReadOnlyList<FittedLevel> levels, bool areAlike) =>
        new(varying.Column, levels.Count, [.. levels.Select(Row).OfType<LevelRow>().OrderBy(r => r.Half)], areAlike);

    private static LevelRow? Row(FittedLevel level) =>
        level is { HalfKeeperExposure: { } half, HalfKeeperSet.Pieces: var pieces }
            ? new LevelRow(
                level.ToString(),
                half.Log2Seconds,
                pieces.FirstOrDefault()?.Lower,
                pieces.LastOrDefault()?.Upper,
                level.Borrowed
            )
            : null;
}
