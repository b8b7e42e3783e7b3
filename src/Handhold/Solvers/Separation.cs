using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Whether, where and in which coefficients keepers and rejects separate.</summary>
public sealed class Separation
{
    internal Separation(SeparationKind kind, ImmutableArray<DivergentColumn> columns, ImmutableArray<int> rows) =>
        (Kind, Columns, Rows) = (kind, columns, rows);

    /// <summary>The verdict.</summary>
    public SeparationKind Kind { get; }

    /// <summary>The coefficients that diverge, in the order of the columns.</summary>
    public ImmutableArray<DivergentColumn> Columns { get; }

    /// <summary>The rows that some separating predictor parts strictly, ascending; the others overlap.</summary>
    public ImmutableArray<int> Rows { get; }

    /// <summary>Whether no finite maximum of the likelihood exists.</summary>
    public bool IsSeparated => Kind is not (SeparationKind.None or SeparationKind.Unknown);

    /// <summary>Decides the separation of a problem.</summary>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    public static Separation Of(BinomialProblem problem) => throw new NotSupportedException();
}
