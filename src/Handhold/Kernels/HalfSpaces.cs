namespace Handhold.Kernels;

/// <summary>Which of the half-spaces a·u ≥ 0 some u meets strictly while it meets all.</summary>
/// <remarks>
/// The linear program: greatest Σ s over u, with 0 ≤ s ≤ 1 and s ≤ a·u. Since such u add up and scale, its value is the number of rows that can be strict, so
/// the answer is a whole number and tolerances decide nothing unless two of them are within 1e-9. Solved by its dual, least Σ t with Σ a (t - e) = Σ a,
/// 0 ≤ t ≤ 1, 0 ≤ e, whose bases are as small as u: revised simplex with bounds, the most negative reduced cost until it stalls, then Bland's rule.
/// Source of the program: Konis (2007), Linear programming algorithms for detecting separated data, thesis, Oxford.
/// </remarks>
internal sealed class HalfSpaces
{
    private const double Tolerance = 1e-9;

    private readonly double[] _a;
    private readonly int _rows;
    private readonly int _size;
    private readonly int[] _basis;
    private readonly bool[] _basic;
    private readonly bool[] _upper;
    private readonly double[] _inverse;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _w;

    private HalfSpaces(double[] a, int rows, int size)
    {
        (_a, _rows, _size) = (a, rows, size);
        (_basis, _basic, _upper) = (new int[size], new bool[2 * rows + size], new bool[2 * rows + size]);
        (_inverse, _x, _y, _w) = (new double[2 * size * size], new double[size], new double[size], new double[size]);
        Array.Fill(_upper, true, 0, rows);
        for (var k = 0; k < size; k++)
            _basic[_basis[k] = 2 * rows + k] = true;
    }

    /// <summary>The rows that can be strict, or null when the program did not finish or its answer did not pass its check.</summary>
    /// <param name="a">Rows × size, row-major, each row of length one or zero.</param>
    /// <param name="rows">Half-spaces.</param>
    /// <param name="size">Coordinates of u.</param>
    internal static bool[]? Strict(double[] a, int rows, int size)
    {
        HalfSpaces program = new(a, rows, size);
        return program.Solve() ? program.Answer() : null;
    }

    // t of each row, then e, then what starts the basis and is always zero.
    private ReadOnlySpan<double> Row(int variable) => _a.AsSpan(variable % _rows * _size, _size);

    private double Sign(int variable) => variable < _rows ? 1 : -1;

    private double Bound(int variable) =>
        variable < _rows ? 1
        : variable < 2 * _rows ? double.PositiveInfinity
        : 0;

    private bool Solve()
    {
        var (limit, stalled) = (1000 + 50 * (_rows + _size), 0);
        for (var step = 0; step < limit; step++)
        {
            if (!Refresh())
                return false;
            var entering = Entering(bland: stalled > 20 + _size);
            if (entering < 0)
                return true;
            var moved = Exchange(entering, bland: stalled > 20 + _size);
            if (double.IsInfinity(moved))
                return false;
            stalled = moved > 1e-12 ? 0 : stalled + 1;
        }
        return false;
    }

    // The inverse of the basis by Gauss and Jordan, the basic values and the prices.
    private bool Refresh()
    {
        var width = 2 * _size;
        Array.Clear(_inverse);
        for (var k = 0; k < _size; k++)
        {
            _inverse[k * width + _size + k] = 1;
            for (var i = 0; i < _size; i++)
                _inverse[i * width + k] = Column(_basis[k], i);
        }
        for (var k = 0; k < _size; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < _size; i++)
                if (Math.Abs(_inverse[i * width + k]) > Math.Abs(_inverse[pivot * width + k]))
                    pivot = i;
            var value = _inverse[pivot * width + k];
            if (!(Math.Abs(value) > 1e-13))
                return false;
            for (var j = 0; j < width; j++)
                (_inverse[k * width + j], _inverse[pivot * width + j]) = (
                    _inverse[pivot * width + j] / value,
                    pivot == k ? _inverse[pivot * width + j] / value : _inverse[k * width + j]
                );
            for (var i = 0; i < _size; i++)
                if (i != k && _inverse[i * width + k] is var factor && factor != 0)
                    for (var j = 0; j < width; j++)
                        _inverse[i * width + j] -= factor * _inverse[k * width + j];
        }
        Array.Clear(_w);
        for (var row = 0; row < _rows; row++)
            if (_basic[row] || !_upper[row])
                for (var i = 0; i < _size; i++)
                    _w[i] += _a[row * _size + i];
        for (var k = 0; k < _size; k++)
        {
            (_x[k], _y[k]) = (0, 0);
            for (var i = 0; i < _size; i++)
            {
                _x[k] += _inverse[k * width + _size + i] * _w[i];
                _y[k] += _basis[i] < _rows ? _inverse[i * width + _size + k] : 0;
            }
        }
        return true;
    }

    private double Column(int variable, int i) =>
        variable < 2 * _rows ? Sign(variable) * _a[variable % _rows * _size + i]
        : variable - 2 * _rows == i ? 1
        : 0;

    private int Entering(bool bland)
    {
        var (best, worst) = (-1, Tolerance * (1 + Math.Sqrt(Orthonormal.Dot(_y, _y))));
        for (var variable = 0; variable < 2 * _rows; variable++)
        {
            if (_basic[variable])
                continue;
            var cost = (variable < _rows ? 1 : 0) - Sign(variable) * Orthonormal.Dot(Row(variable), _y);
            var gain = _upper[variable] ? cost : -cost;
            if (gain <= worst)
                continue;
            (best, worst) = (variable, gain);
            if (bland)
                break;
        }
        return best;
    }

    // Moves the entering variable as far as it goes; the one that stops it leaves the basis.
    private double Exchange(int entering, bool bland)
    {
        var way = _upper[entering] ? -1 : 1;
        var (step, leaving, toUpper, size) = (Bound(entering), -1, false, 0.0);
        for (var k = 0; k < _size; k++)
        {
            var along = 0.0;
            for (var i = 0; i < _size; i++)
                along += _inverse[k * 2 * _size + _size + i] * Column(entering, i);
            along *= way;
            var bound = along > 0 ? 0 : Bound(_basis[k]);
            if (Math.Abs(along) <= 1e-10 || double.IsInfinity(bound))
                continue;
            var reach = Math.Max(0, (_x[k] - bound) / along);
            var tie = Math.Abs(reach - step) <= 1e-12 * (1 + step);
            var better = bland ? leaving >= 0 && _basis[k] < _basis[leaving] : Math.Abs(along) > size;
            if (tie ? better : reach < step)
                (step, leaving, toUpper, size) = (reach, k, along < 0, Math.Abs(along));
        }
        if (leaving < 0)
        {
            _upper[entering] = !_upper[entering];
            return step;
        }
        (_basic[_basis[leaving]], _upper[_basis[leaving]]) = (false, toUpper && _basis[leaving] < _rows);
        (_basis[leaving], _basic[entering]) = (entering, true);
        return step;
    }

    // Rows with t = 1 are strict. The prices are a u that shows it: at least 1 there, and 0 on all others.
    private bool[]? Answer()
    {
        var strict = new bool[_rows];
        for (var row = 0; row < _rows; row++)
            strict[row] = !_basic[row] && _upper[row];
        for (var k = 0; k < _size; k++)
            if (_basis[k] < _rows)
                strict[_basis[k]] = _x[k] > 0.5;
        var slack = 1e-7 * (1 + Math.Sqrt(Orthonormal.Dot(_y, _y)));
        for (var row = 0; row < _rows; row++)
        {
            var margin = Orthonormal.Dot(Row(row), _y);
            if (strict[row] ? !(margin > 1 - 1e-6) : !(Math.Abs(margin) < slack))
                return null;
        }
        return strict;
    }
}
