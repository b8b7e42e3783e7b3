using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Columns that add nothing to those before them, so that their coefficients cannot be told apart.</summary>
public sealed class AliasedColumnsException : ArgumentException
{
    internal AliasedColumnsException(ImmutableArray<AliasedColumn> columns)
        : base(string.Join(" ", columns) + " Leave the column out, or vary what it stands for.") => Columns = columns;

    /// <summary>The columns, each with what it equals.</summary>
    public ImmutableArray<AliasedColumn> Columns { get; }
}
