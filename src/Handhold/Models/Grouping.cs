using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>The levels of a column that varies, in byte order of their paths.</summary>
internal sealed class Grouping
{
    private readonly ImmutableDictionary<string, int> _places;

    private Grouping(Varying varying, ImmutableArray<ImmutableArray<string>> levels)
    {
        (Varying, Levels) = (varying, levels);
        _places = levels.Select((level, i) => KeyValuePair.Create(Key(level), i)).ToImmutableDictionary(StringComparer.Ordinal);
    }

    internal Varying Varying { get; }

    /// <summary>Of each level the labels of its path, its own last.</summary>
    internal ImmutableArray<ImmutableArray<string>> Levels { get; }

    /// <summary>The levels that frames have.</summary>
    /// <exception cref="CellException">Some frames lack a label.</exception>
    internal static Grouping Of(Varying varying, ImmutableArray<FrameCell> cells, string place)
    {
        foreach (var column in varying.Path)
            if (cells.Count(c => c.Conditions[column] is null) is > 0 and var lacking)
                throw new CellException(
                    place,
                    FormattableString.Invariant($"{lacking} of its {cells.Length} cells have no {column} recorded, which is to vary."),
                    $"Fill in the {column} of every row, or let another column vary."
                );
        return new(
            varying,
            [
                .. cells
                    .Select(c => PathOf(varying, c.Conditions)!.Value)
                    .DistinctBy(Key, StringComparer.Ordinal)
                    .OrderBy(Key, StringComparer.Ordinal),
            ]
        );
    }

    /// <summary>The level of conditions; null where they do not say it, or say one that no frame had.</summary>
    internal int? LevelOf(Conditions conditions) =>
        PathOf(Varying, conditions) is { } path && _places.TryGetValue(Key(path), out var place) ? place : null;

    private static ImmutableArray<string>? PathOf(Varying varying, Conditions conditions)
    {
        var labels = varying.Path.Select(column => conditions[column]).ToArray();
        return labels.Contains(null) ? null : [.. labels.OfType<string>()];
    }

    private static string Key(ImmutableArray<string> path) => string.Join('\u001f', path);
}
