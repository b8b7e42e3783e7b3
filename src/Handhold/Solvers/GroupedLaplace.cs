using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The log-likelihood of groupings of any structure by Laplace's method, with its exact gradient; owns its workspace.</summary>
/// <remarks>
/// With effects Λu, u standard normal, and a_i = Λᵀz_i the loadings of row i on the u of its levels, h(u) = Σ l_i(x_i·b + a_i·u) - u·u/2 has its top at û, and
/// L = h(û) - ½ log det H, H = I + Σ w_i a_i a_iᵀ, w_i minus the second derivative of l_i. H is sparse: groupings of many levels are eliminated first, so that
/// nested ones fill nothing in. With v_i = a_i·H⁻¹a_i the determinant pulls at row i by c_i = -½ w_i' v_i, and moves û by t = H⁻¹ Σ c_i a_i; row i's predictor is
/// pulled by e_i = l_i' + c_i - w_i a_i·t in all. Source: Tierney and Kadane (1986), Journal of the American Statistical Association 81, 82-86; the gradient by implicit
/// differentiation as in Kristensen and others (2016), Journal of Statistical Software 70(5).
/// </remarks>
internal sealed partial class GroupedLaplace : IGroupedLikelihood
{
    private readonly BinomialProblem _rows;
    private readonly ImmutableArray<LevelEffects> _effects;
    private readonly int _width;
    private readonly int[] _order;
    private readonly int[] _starts;
    private readonly int[] _coordinates;
    private readonly int[] _places;
    private readonly int[] _diagonal;
    private readonly double[] _columns;
    private readonly double[] _loadings;
    private readonly double[] _fixed;
    private readonly double[] _score;
    private readonly double[] _weight;
    private readonly double[] _change;
    private readonly double[] _slope;
    private readonly double[] _step;
    private readonly SparseCholesky _factor;

    /// <param name="problem">The rows and their groupings.</param>
    /// <param name="basis">The design of the rows, turned.</param>
    /// <param name="bases">The coordinates of each grouping's effects.</param>
    internal GroupedLaplace(GroupedProblem problem, TurnedDesign basis, ImmutableArray<EffectBasis> bases)
    {
        (_rows, _effects, Basis, Bases) = (problem.Rows, problem.Effects, basis, bases);
        _width = _effects.Sum(e => e.Size);
        Size = basis.Columns + problem.Spreads;
        Firsts = FirstCoordinates(_effects);
        var rows = _rows.Rows;
        (_order, _starts) = Alike(_effects, rows);
        var kinds = _starts.Length - 1;
        (_coordinates, _places) = (new int[kinds * _width], new int[kinds * _width * (_width + 1) / 2]);
        for (var k = 0; k < kinds; k++)
        {
            var place = k * _width;
            for (var t = 0; t < _effects.Length; t++)
            for (var c = 0; c < _effects[t].Size; c++)
                _coordinates[place++] = Coordinate(t, _effects[t].LevelOf[_order[_starts[k]]], c);
        }
        var size = _effects.Sum(e => e.Levels * e.Size);
        _factor = new(size, from k in Enumerable.Range(0, kinds) from pair in Pairs(k) where pair.Row > pair.Column select pair);
        for (var k = 0; k < kinds; k++)
        {
            var place = k * _width * (_width + 1) / 2;
            foreach (var (row, column) in Pairs(k))
                _places[place++] = _factor.Place(row, column);
        }
        _diagonal = [.. Enumerable.Range(0, size).Select(j => _factor.Place(j, j))];
        _columns = Columns(problem, bases);
        _loadings = new double[rows * _width];
        (_fixed, _score, _weight, _change) = (new double[rows], new double[rows], new double[rows], new double[rows]);
        (Top, _slope, _step) = (new double[size], new double[size], new double[size]);
    }

    /// <inheritdoc />
    public int Size { get; }

    /// <inheritdoc />
    public TurnedDesign Basis { get; }

    internal ImmutableArray<EffectBasis> Bases { get; }

    /// <summary>û at the last point.</summary>
    internal double[] Top { get; }

    /// <summary>The first coordinate of each grouping.</summary>
    internal ImmutableArray<int> Firsts { get; }

    internal int Coordinate(int grouping, int level, int effect) => Firsts[grouping] + level * _effects[grouping].Size + effect;

    /// <summary>Where Λ of a grouping begins in a point.</summary>
    internal int SpreadsOf(int grouping) => Basis.Columns + _effects.Take(grouping).Sum(e => e.Spreads);

    /// <summary>An entry of H⁻¹ at the last point, of two coordinates that some row touches.</summary>
    internal double InverseAt(int one, int other) => _factor.Inverse[_factor.Place(Math.Max(one, other), Math.Min(one, other))];

    /// <summary>Replaces x by H⁻¹ x at the last point.</summary>
    internal void Solve(Span<double> x) => _factor.Solve(x);

    /// <inheritdoc />
    public double At(ReadOnlySpan<double> point, Span<double> gradient)
    {
        Load(point);
        var top = FindTop();
        if (double.IsNegativeInfinity(top))
            return top;
        Differentiate(gradient);
        return top - 0.5 * _factor.LogDeterminant();
    }

    // Groupings of many levels first.
    private static ImmutableArray<int> FirstCoordinates(ImmutableArray<LevelEffects> effects)
    {
        var (firsts, next) = (new int[effects.Length], 0);
        foreach (var t in Enumerable.Range(0, effects.Length).OrderByDescending(t => effects[t].Levels))
            (firsts[t], next) = (next, next + effects[t].Levels * effects[t].Size);
        return [.. firsts];
    }

    // Rows of the same levels one after another.
    private static (int[] Order, int[] Starts) Alike(ImmutableArray<LevelEffects> effects, int rows)
    {
        IOrderedEnumerable<int> sorted = Enumerable.Range(0, rows).OrderBy(i => effects[0].LevelOf[i]);
        foreach (var effect in effects.Skip(1))
            sorted = sorted.ThenBy(i => effect.LevelOf[i]);
        int[] order = [.. sorted];
        return (
            order,
            [.. Enumerable.Range(0, rows).Where(p => p == 0 || effects.Any(e => e.LevelOf[order[p]] != e.LevelOf[order[p - 1]])), rows]
        );
    }

    private IEnumerable<(int Row, int Column)> Pairs(int kind)
    {
        for (var a = 0; a < _width; a++)
        for (var b = 0; b <= a; b++)
        {
            var (one, other) = (_coordinates[kind * _width + a], _coordinates[kind * _width + b]);
            yield return (Math.Max(one, other), Math.Min(one, other));
        }
    }

    // z̃ of every row, in the order of kinds.
    private double[] Columns(GroupedProblem problem, ImmutableArray<EffectBasis> bases)
    {
        var columns = new double[_order.Length * _width];
        var wide = _rows.Columns.Length;
        for (var p = 0; p < _order.Length; p++)
        {
            var row = _rows.Design.Span.Slice(_order[p] * wide, wide);
            var place = p * _width;
            for (var t = 0; t < _effects.Length; t++)
            for (var a = 0; a < _effects[t].Size; a++)
            {
                for (var c = 0; c < _effects[t].Size; c++)
                    columns[place] += bases[t].Weights[a * _effects[t].Size + c] * row[problem.Effects[t].Columns[c]];
                place++;
            }
        }
        return columns;
    }
}
