using System.Collections.Immutable;
using Handhold.Models;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The levels that vary in one curve, and the fit that has them.</summary>
internal sealed partial class GroupedCurve(GroupLayout layout, GroupedFit fit, ImmutableArray<FrameCell> cells)
{
    internal GroupLayout Layout => layout;

    internal GroupedFit Fit => fit;

    /// <summary>The levels of these conditions by part; those that the conditions do not say are left out.</summary>
    internal ImmutableArray<(int Part, int Level)> LevelsOf(Conditions conditions) =>
        [.. layout.Groupings.SelectMany(g => g.LevelOf(conditions) is { } level ? layout.PartsOf([g]).Select(part => (part, level)) : [])];

    internal ImmutableArray<GroupSpread> Spreads(
        CurveLikelihood likelihood,
        Conditions reference,
        double level,
        CancellationToken cancellation
    ) => [.. layout.Groupings.Select(grouping => SpreadOf(grouping, likelihood, reference, level, cancellation))];

    private GroupSpread SpreadOf(
        Grouping grouping,
        CurveLikelihood likelihood,
        Conditions reference,
        double level,
        CancellationToken cancellation
    )
    {
        var parts = layout.PartsOf([grouping]);
        (int Part, int Effect, int Column, string Name)[] effects =
        [
            .. parts.SelectMany(p => layout.Parts[p].Columns.Select((column, e) => (p, e, column, layout.Design.Columns[column]))),
        ];
        var isTerm = grouping.Varying.Term is not null;
        var counts = cells.ToLookup(cell => grouping.LevelOf(cell.Conditions)!.Value);
        return new(
            grouping.Varying,
            [.. effects.Select(e => Sd(e.Part, e.Effect, e.Name, level, cancellation))],
            parts is [var only] ? fit.Correlation(only) : null,
            isTerm ? TermSpreadInStops(parts, reference) : new GroupedLaw(likelihood, reference, [], parts).SpreadInStops(0.5),
            [.. grouping.Levels.Select((path, l) => LevelOf(path, l))]
        );

        GroupLevel LevelOf(ImmutableArray<string> path, int place) =>
            new(
                path,
                SpeedCount.Of(counts[place]),
                [
                    .. effects.Select(e => new GroupEffect(
                        e.Name,
                        fit.Modes.Effects(e.Part, place)[e.Effect],
                        fit.Modes.Error(e.Part, place, e.Effect),
                        new(() => isTerm ? InStops(e.Column, LevelsOf(Above(grouping, path)), reference, level) : null)
                    )),
                ],
                isTerm ? parts.Average(part => fit.Modes.Open(part, place)) : fit.Modes.Open(parts[0], place),
                new(() => new GroupedLaw(likelihood, reference, LevelsOf(Above(grouping, path)), [])),
                level
            );
    }

    /// <summary>The labels of a level and of those that it lies within.</summary>
    private static Conditions Above(Grouping grouping, ImmutableArray<string> path) =>
        grouping.Varying.Path.Zip(path).Aggregate(Conditions.None, (conditions, label) => conditions.With(label.First, label.Second));

    private Coefficient Sd(int part, int effect, string name, double level, CancellationToken cancellation)
    {
        var (spread, error) = fit.SpreadOf(part, effect);
        var (lower, upper) = new GroupedProfile(fit, level, cancellation).SpreadInterval(part, effect);
        return new(name, spread, error, new(lower, upper, level, "profile"));
    }
}
