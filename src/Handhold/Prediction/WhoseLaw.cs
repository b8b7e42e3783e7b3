using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;

namespace Handhold.Prediction;

/// <summary>The law of the levels that are meant.</summary>
internal static class WhoseLaw
{
    private const int MostNamed = 12;

    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level is not named or unknown.</exception>
    internal static ILineLaw Of(LinearFit linear, AnswerOptions options)
    {
        var conditions = options.Conditions.Or(linear.SharedConditions);
        if (linear.Likelihood.Grouped is not { Layout: var layout } || options.Whose == Whose.Typical)
            return new ProfileLaw(linear.Likelihood, conditions);
        return options.Whose switch
        {
            Whose.This => Law(layout.Groupings),
            Whose.NewSetup => Law([.. layout.Groupings.Where(g => !IsNewWithSetup(g, layout.Groupings))]),
            Whose.NewPhotographer => Law([]),
            Whose.Population => new GroupedLaw(linear.Likelihood, conditions, [], layout.PartsOf(layout.Groupings), isAverage: true),
            _ => throw new ConditionsException(
                "whose",
                $"This curve holds {string.Join(" and ", layout.Groupings.Select(Count))}, and it was not said whose rate is meant.",
                "Say whose: this one, a typical one, a new setup, a new photographer, or the population's."
            ),
        };

        GroupedLaw Law(ImmutableArray<Grouping> known) =>
            new(
                linear.Likelihood,
                conditions,
                [.. known.SelectMany(g => layout.PartsOf([g]).Select(part => (part, Level(g, conditions))))],
                layout.PartsOf([.. layout.Groupings.Except(known)])
            );
    }

    /// <summary>A new setup is new in all that belongs to it; where no setup varies, in what lies within another level that does.</summary>
    private static bool IsNewWithSetup(Grouping grouping, ImmutableArray<Grouping> all) =>
        all.Any(g => g.Varying.Column == "setup")
            ? grouping.Varying.Path.Contains("setup")
            : grouping.Varying.Within.Any(column => all.Any(g => g.Varying.Column == column));

    private static int Level(Grouping grouping, Conditions conditions)
    {
        if (grouping.LevelOf(conditions) is { } level)
            return level;
        var (column, path) = (grouping.Varying.Column, grouping.Varying.Path);
        var missing = path.Where(c => conditions[c] is null).ToArray();
        throw new ConditionsException(
            column,
            missing.Length > 0
                ? $"The answer depends on {string.Join(" and ", missing)}, and it was not said for which."
                : $"No frame had {string.Join(", ", path.Select(c => $"{c} {conditions[c]}"))}.",
            missing.Length == 0 ? $"Set {column} to {Some(grouping)}, or ask for a new one."
                : path.Length > 1 ? $"Set {string.Join(" and ", path)}, such as {Some(grouping)}."
                : $"Set {column} to {Some(grouping)}."
        );
    }

    private static string Some(Grouping grouping) =>
        string.Join(", ", grouping.Levels.Take(MostNamed).Select(level => string.Join(" · ", level)))
        + (grouping.Levels.Length > MostNamed ? ", ..." : "");

    private static string Count(Grouping grouping) => Say.Count(grouping.Levels.Length, grouping.Varying.Column);
}
