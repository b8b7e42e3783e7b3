using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>A term of a linear predictor: one column for a number, one for each level but the reference for labels.</summary>
internal sealed class DesignTerm
{
    private readonly TermSource _source;

    private DesignTerm(TermSource source, ImmutableArray<string> levels)
    {
        (_source, Levels) = (source, levels);
        Columns = IsNumber ? [source.Name] : [.. levels.Skip(1).Select(level => $"{source.Name}={level}")];
    }

    internal string Name => _source.Name;

    /// <summary>Names of its columns.</summary>
    internal ImmutableArray<string> Columns { get; }

    /// <summary>Columns of the table that state it.</summary>
    internal ImmutableArray<string> Sources => _source.Columns;

    /// <summary>Its levels, first the one that the others are measured against; empty for a number.</summary>
    internal ImmutableArray<string> Levels { get; }

    private bool IsNumber => Levels.IsEmpty;

    /// <summary>The term as the frames of a curve have it: a number where all have one, otherwise levels.</summary>
    /// <exception cref="CellException">Some frames lack it, or all have the same.</exception>
    internal static DesignTerm Of(TermSource source, ImmutableArray<FrameCell> cells, string place)
    {
        var columns = string.Join(" or ", source.Columns);
        if (cells.Count(c => source.Text(c.Conditions) is null) is > 0 and var lacking)
            throw new CellException(
                place,
                FormattableString.Invariant($"{lacking} of its {cells.Length} cells have no {source.Name} recorded."),
                $"Fill in {columns} of every row, or leave the term out (--no-terms when it was not asked for)."
            );
        var values = cells.Select(c => source.Text(c.Conditions)!).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (values is [var only])
            throw new CellException(
                place,
                $"the term {source.Name} is {only} in all of its frames, so its effect cannot be told.",
                $"Leave the term out, or add frames with another {source.Name}."
            );
        if (cells.All(c => source.Number(c.Conditions) is not null))
            return new(source, []);
        var labels = cells.Select(c => Label(source, c.Conditions)).Distinct().Order(StringComparer.Ordinal).ToArray();
        return new(source, [.. labels.OrderBy(label => label != source.Reference)]);
    }

    /// <summary>How many steps of levels lie between these conditions and the reference: 0 or 1; 0 for a number.</summary>
    internal int FromReference(Conditions conditions) => IsNumber || Label(_source, conditions) == Levels[0] ? 0 : 1;

    /// <summary>The level of these conditions.</summary>
    /// <exception cref="ConditionsException">The conditions lack the term, or have a level that no frame had.</exception>
    internal string LevelOf(Conditions conditions)
    {
        var label = Label(_source, conditions);
        return Levels.Contains(label)
            ? label
            : throw new ConditionsException(
                Name,
                _source.Text(conditions) is { } strange
                    ? $"No frame had {strange} as its {Name}."
                    : $"The answer depends on {Name}, and it was not said for which.",
                $"Set {_source.Columns[^1]} to {string.Join(" or ", Levels)}."
            );
    }

    /// <summary>Writes a value for each column.</summary>
    /// <exception cref="ConditionsException">The conditions lack the term, or have a level that no frame had.</exception>
    internal void Read(Conditions conditions, Span<double> values)
    {
        if (IsNumber)
        {
            values[0] =
                _source.Number(conditions)
                ?? _source.Unsaid
                ?? throw new ConditionsException(
                    Name,
                    $"The answer depends on {Name}, and it was not said for which.",
                    $"Set {string.Join(" or ", _source.Columns)}."
                );
            return;
        }

        var level = Levels.IndexOf(LevelOf(conditions));
        for (var i = 1; i < Levels.Length; i++)
            values[i - 1] = i == level ? 1 : 0;
    }

    private static string Label(TermSource source, Conditions conditions) => source.Label(conditions) ?? source.Text(conditions) ?? "";
}
