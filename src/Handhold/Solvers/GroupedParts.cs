using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>The log-likelihood of groupings of any structure by Laplace's method: the sum over rows that share no level, found side by side. It does not depend on the number of threads.</summary>
internal sealed class GroupedParts : IGroupedLikelihood
{
    // Rows of a part, whose numbers stay near the processor from one step to the next.
    private const int Rows = 2048;

    private readonly ImmutableArray<GroupedLaplace> _parts;
    private readonly double[] _point;
    private readonly double[] _values;
    private readonly double[][] _gradients;

    /// <param name="problem">The rows and their groupings.</param>
    /// <param name="basis">The design of the rows, turned.</param>
    /// <param name="bases">The coordinates of each grouping's effects.</param>
    internal GroupedParts(GroupedProblem problem, TurnedDesign basis, ImmutableArray<EffectBasis> bases)
    {
        Basis = basis;
        _parts = [.. problem.Parts(Rows).Select(p => new GroupedLaplace(p.Part, basis, p.First, bases))];
        _point = new double[basis.Columns + problem.Spreads];
        _values = new double[_parts.Length];
        _gradients = [.. _parts.Select(_ => new double[Size])];
    }

    /// <inheritdoc />
    public int Size => _point.Length;

    /// <inheritdoc />
    public TurnedDesign Basis { get; }

    /// <inheritdoc />
    public double At(ReadOnlySpan<double> point, Span<double> gradient)
    {
        point.CopyTo(_point);
        Parallel.For(0, _parts.Length, i => _values[i] = _parts[i].At(_point, _gradients[i]));
        gradient.Clear();
        foreach (var part in _gradients)
            for (var a = 0; a < part.Length; a++)
                gradient[a] += part[a];
        return _values.Sum();
    }
}
