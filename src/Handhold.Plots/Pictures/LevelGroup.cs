using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>The levels of one column that were fitted together, by either estimator.</summary>
/// <param name="Column">The column.</param>
/// <param name="Levels">The levels, in byte order.</param>
/// <param name="AreAlike">Whether their spread is estimated as none.</param>
internal sealed record LevelGroup(string Column, ImmutableArray<FittedLevel> Levels, bool AreAlike)
{
    /// <summary>The levels of a column, or of the first that varies, in half-keeper speeds rather than in what a term buys.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static LevelGroup Of(KeeperCurve curve, string? column) =>
        curve.Linear is { } linear
            ? Of(Chosen([.. linear.Groups.Where(g => g.Varying.Term is null)], g => g.Varying.Column, column))
            : Of(Chosen([.. curve.Levels.Where(g => g.Varying.Term is null)], g => g.Varying.Column, column));

    /// <summary>Those with a half-keeper exposure, the fastest first.</summary>
    public ImmutableArray<LevelRow> Rows() => [.. Levels.Select(Row).OfType<LevelRow>().OrderBy(r => r.Half)];

    /// <summary>The group of a column, or the first.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    private static T Chosen<T>(ImmutableArray<T> groups, Func<T, string> columnOf, string? column)
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

    private static LevelGroup Of(GroupSpread group) =>
        new(group.Varying.Column, [.. group.Levels], group.Spreads.All(s => s.Estimate == 0));

    private static LevelGroup Of(VaryingLevels group) => new(group.Varying.Column, [.. group.Levels], AreAlike: false);

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
