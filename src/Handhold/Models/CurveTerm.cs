using System.Collections.Immutable;

namespace Handhold;

/// <summary>A term of a curve, beside the exposure.</summary>
public sealed class CurveTerm
{
    internal CurveTerm(string name, ImmutableArray<string> columns, ImmutableArray<string> levels) =>
        (Name, Columns, Levels) = (name, columns, levels);

    /// <summary>Its name: a column of the table, or a built-in term such as <c>focal</c>.</summary>
    public string Name { get; }

    /// <summary>The columns that state it; a question must say one of them.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>Its levels, the reference first; empty for a number.</summary>
    public ImmutableArray<string> Levels { get; }
}
