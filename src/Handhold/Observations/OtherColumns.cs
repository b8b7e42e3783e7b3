using System.Collections.Immutable;

namespace Handhold;

/// <summary>Columns without a property of their own; equal when their names and texts are.</summary>
internal sealed class OtherColumns : IEquatable<OtherColumns>
{
    private OtherColumns(ImmutableSortedDictionary<string, string> values) => Values = values;

    internal static OtherColumns None { get; } = new(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));

    internal ImmutableSortedDictionary<string, string> Values { get; }

    internal static OtherColumns Checked(ImmutableSortedDictionary<string, string> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        foreach (var (column, text) in values)
        {
            if (Conditions.ColumnNames.Contains(column))
                throw new CellException(column, "this column has a property of its own.", "Set that property instead.");
            if (string.IsNullOrWhiteSpace(column) || string.IsNullOrWhiteSpace(text))
                throw new CellException($"'{column}'", "the name or its text is blank.", "Leave out what was not recorded.");
        }

        return values.IsEmpty ? None : new(values.WithComparers(StringComparer.Ordinal, StringComparer.Ordinal));
    }

    public bool Equals(OtherColumns? other) => other is not null && (ReferenceEquals(this, other) || Values.SequenceEqual(other.Values));

    public override bool Equals(object? obj) => Equals(obj as OtherColumns);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var (column, text) in Values)
        {
            hash.Add(column, StringComparer.Ordinal);
            hash.Add(text, StringComparer.Ordinal);
        }

        return hash.ToHashCode();
    }
}
