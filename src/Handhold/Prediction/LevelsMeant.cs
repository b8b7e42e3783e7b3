using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Prediction;

/// <summary>Which levels a question is about.</summary>
/// <param name="Known">Levels that the conditions name, by grouping and place.</param>
/// <param name="Fresh">Groupings whose levels are drawn anew.</param>
internal sealed record LevelsMeant(ImmutableArray<(int Grouping, int Level)> Known, ImmutableArray<int> Fresh)
{
    private const int MostNamed = 12;

    /// <summary>The levels meant; of those neither known nor fresh the typical ones.</summary>
    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level is not named or unknown.</exception>
    internal static LevelsMeant By(Whose? whose, ImmutableArray<Grouping> groupings, Conditions conditions)
    {
        return whose switch
        {
            Whose.Typical => new([], []),
            { } who => Knowing(who),
            null => throw new ConditionsException(
                "whose",
                $"This curve holds {Listing.And(groupings.Select(g => Say.Count(g.Levels.Length, g.Varying.Column)).Distinct())}, and it was not said whose rate is meant.",
                "Say whose: this one, a typical one, a new setup, a new photographer, or the population's."
            ),
        };

        LevelsMeant Knowing(Whose who)
        {
            ImmutableArray<Varying> all = [.. groupings.Select(g => g.Varying)];
            var places = Enumerable.Range(0, groupings.Length).ToLookup(g => who.Names(all[g], all));
            return new([.. places[true].Select(g => (g, Level(groupings[g], conditions)))], [.. places[false]]);
        }
    }

    /// <summary>Refuses to compare levels that are not those meant, so that both sides would be one.</summary>
    /// <exception cref="ConditionsException">The sides differ in levels alone, and it is not them whose rate is meant.</exception>
    internal static void CheckApart(KeeperCurve curve, Whose? whose, Conditions a, Conditions b)
    {
        ImmutableArray<Grouping> groupings = curve.Varying is { } varying
            ? [.. varying.Spreads.Select(s => s.Grouping)]
            : curve.Linear?.Likelihood.Grouped?.Layout.Groupings ?? [];
        string[] apart = [.. groupings.SelectMany(g => g.Varying.Path).Distinct().Where(column => a[column] != b[column])];
        if (
            apart.Length > 0
            && Terms().All(column => a[column] == b[column])
            && By(whose, groupings, a).Known.SequenceEqual(By(whose, groupings, b).Known)
        )
            throw new ConditionsException(
                "whose",
                $"The two sides differ in {Listing.And(apart)}, and {(whose == Whose.Typical ? "a typical level" : "a new level")} is none of those.",
                "Ask whose this one."
            );

        IEnumerable<string> Terms() => curve.Terms.SelectMany(t => t.Columns);
    }

    private static int Level(Grouping grouping, Conditions conditions)
    {
        if (grouping.LevelOf(conditions) is { } level)
            return level;
        var (column, path) = (grouping.Varying.Column, grouping.Varying.Path);
        var missing = path.Where(c => conditions[c] is null).ToArray();
        throw new ConditionsException(
            column,
            missing.Length > 0
                ? $"The answer depends on {Listing.And(missing)}, and it was not said for which."
                : $"No frame had {string.Join(", ", path.Select(c => $"{c} {conditions[c]}"))}.",
            missing.Length == 0 ? $"Set {column} to {Some(grouping)}, or ask for a new one."
                : path.Length > 1 ? $"Set {Listing.And(path)}, such as {Some(grouping)}."
                : $"Set {column} to {Some(grouping)}."
        );
    }

    private static string Some(Grouping grouping) =>
        string.Join(", ", grouping.Levels.Take(MostNamed).Select(level => string.Join(" · ", level)))
        + (grouping.Levels.Length > MostNamed ? ", ..." : "");
}
