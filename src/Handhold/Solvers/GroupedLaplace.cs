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
internal sealed partial class GroupedLaplace
{
    private readonly BinomialProblem _rows;
    private readonly TurnedDesign _basis;
    private readonly int _first;
    private readonly ImmutableArray<LevelEffects> _effects;
    private readonly ImmutableArray<EffectBasis> _bases;
    private readonly ImmutableArray<int> _firsts; // coordinates, of each grouping
    private readonly int _width;
    private readonly int[] _starts;
    private readonly int[] _coordinates;
    private readonly int[] _places;
    private readonly int[] _diagonal;
    private readonly double[] _kept;
    private readonly double[] _lost;
    private readonly double[] _loadings;
    private readonly double[] _fixed;
    private readonly double[] _score;
    private readonly double[] _weight;
    private readonly double[] _change;
    private readonly double[] _slope;
    private readonly double[] _step;
    private readonly SparseCholesky _factor;

    /// <param name="problem">The rows and their groupings.</param>
    /// <param name="basis">The design, turned.</param>
    /// <param name="first">The row of the design that is the first of the problem.</param>
    /// <param name="bases">The coordinates of each grouping's effects.</param>
    internal GroupedLaplace(GroupedProblem problem, TurnedDesign basis, int first, ImmutableArray<EffectBasis> bases)
    {
        (_rows, _basis, _first, _bases) = (problem.Rows, basis, first, bases);
        // Whose row is whose stands in the coordinates.
        _effects = [.. problem.Effects.Select(e => e with { LevelOf = [] })];
        _width = _effects.Sum(e => e.Size);
        _firsts = FirstCoordinates(_effects);
        var rows = _rows.Rows;
        _starts = [.. Enumerable.Range(0, rows).Where(i => i == 0 || !problem.IsLike(i, i - 1)), rows];
        var kinds = _starts.Length - 1;
        (_coordinates, _places) = (new int[kinds * _width], new int[kinds * _width * (_width + 1) / 2]);
        for (var k = 0; k < kinds; k++)
        {
            var place = k * _width;
            for (var t = 0; t < _effects.Length; t++)
            for (var c = 0; c < _effects[t].Size; c++)
                _coordinates[place++] = Coordinate(t, problem.Effects[t].LevelOf[_starts[k]], c);
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
        var eights = (rows + 7) / 8 * 8;
        (_kept, _lost) = (new double[eights], new double[eights]);
        for (var p = 0; p < rows; p++)
            (_kept[p], _lost[p]) = (_rows.Keepers.Span[p], _rows.Frames.Span[p] - _rows.Keepers.Span[p]);
        _loadings = new double[rows * _width];
        (_fixed, _score, _weight, _change) = (new double[rows], new double[eights], new double[eights], new double[eights]);
        (Top, _slope, _step) = (new double[size], new double[size], new double[size]);
    }

    /// <summary>û at the last point.</summary>
    internal double[] Top { get; }

    internal int Coordinate(int grouping, int level, int effect) => _firsts[grouping] + level * _effects[grouping].Size + effect;

    /// <summary>An entry of H⁻¹ at the last point, of two coordinates that some row touches.</summary>
    internal double InverseAt(int one, int other) => _factor.Inverse[_factor.Place(Math.Max(one, other), Math.Min(one, other))];

    /// <summary>Replaces x by H⁻¹ x at the last point.</summary>
    internal void Solve(Span<double> x) => _factor.Solve(x);

    /// <summary>The value at a point and, written, its gradient; negative infinity, the gradient void, where there is none.</summary>
    internal double At(ReadOnlySpan<double> point, Span<double> gradient)
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

    private IEnumerable<(int Row, int Column)> Pairs(int kind)
    {
        for (var a = 0; a < _width; a++)
        for (var b = 0; b <= a; b++)
        {
            var (one, other) = (_coordinates[kind * _width + a], _coordinates[kind * _width + b]);
            yield return (Math.Max(one, other), Math.Min(one, other));
        }
    }

    // z̃ of a row: what it has of a coordinate of a grouping's effects.
    private double Column(int row, int grouping, int coordinate)
    {
        var (effect, value) = (_effects[grouping], 0.0);
        for (var c = 0; c < effect.Size; c++)
            value +=
                _bases[grouping].Weights[coordinate * effect.Size + c] * _rows.Design.Span[row * _rows.Columns.Length + effect.Columns[c]];
        return value;
    }
}
