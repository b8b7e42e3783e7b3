using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>A column that is a combination of the columns before it.</summary>
public sealed class AliasedColumn
{
    internal AliasedColumn(string name, ImmutableArray<(string Name, double Weight)> of) => (Name, Of) = (name, of);

    /// <summary>The column.</summary>
    public string Name { get; }

    /// <summary>The columns before it that make it up, with their weights; empty when it is zero throughout.</summary>
    public ImmutableArray<(string Name, double Weight)> Of { get; }

    /// <summary>One sentence.</summary>
    public override string ToString() =>
        Of.IsEmpty ? $"Column '{Name}' is zero on every row."
        : Of is [var one] ? $"Column '{Name}' is a multiple of '{one.Name}'."
        : $"Column '{Name}' is a sum of multiples of {string.Join(", ", Of.Select(part => $"'{part.Name}'"))}.";

    /// <summary>The columns of a design that are combinations of those before them.</summary>
    public static ImmutableArray<AliasedColumn> In(BinomialProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new OrthonormalDesign(problem).Aliased(problem.Columns);
    }
}
