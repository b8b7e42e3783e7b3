using System.Collections.Immutable;

namespace Handhold;

/// <summary>Which rows of a table made a curve: the splitting columns and their values.</summary>
public sealed class CurveKey
{
    internal CurveKey(ImmutableArray<KeyValuePair<string, string>> values) => Values = values;

    /// <summary>Column and value, in the order of splitting; empty when all rows made one curve.</summary>
    public ImmutableArray<KeyValuePair<string, string>> Values { get; }

    /// <summary>The value of a splitting column, or null.</summary>
    public string? this[string column] => Values.FirstOrDefault(v => v.Key == column).Value;

    /// <summary>The values, joined by a middle dot; "all frames" when nothing splits.</summary>
    public override string ToString() => Values.IsEmpty ? "all frames" : string.Join(" · ", Values.Select(v => v.Value));
}
