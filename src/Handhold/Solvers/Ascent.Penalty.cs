using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class Ascent
{
    private readonly double[] _turn;

    // √W X = Q R: orthonormal columns and factor of the expected information.
    private readonly double[] _w;
    private readonly double[] _expected;

    // Half the log determinant of the expected information XᵀWX.
    private double Penalty()
    {
        var rows = _at.Length;
        for (var i = 0; i < rows; i++)
        {
            var root = Math.Sqrt(Frames(i) * _at[i].Weight);
            for (var j = 0; j < _size; j++)
                _w[j * rows + i] = root * _design.Q[j * rows + i];
        }
        if (Orthonormal.Factor(_w, rows, _size, _expected, 0) > 0)
            return double.NegativeInfinity;
        var sum = _design.LogDeterminant;
        for (var j = 0; j < _size; j++)
            sum += Math.Log(_expected[j * _size + j]);
        return sum;
    }

    // What one row weighs in the expected information, from 0 to 1.
    private double Leverage(int row)
    {
        var sum = 0.0;
        for (var j = 0; j < _size; j++)
            sum += _w[j * _at.Length + row] * _w[j * _at.Length + row];
        return sum;
    }

    // Half tr(M_a M_b) of the penalty's curvature, M_a = Σ (log w)' y_a q qᵀ, where q are the rows of √W X made orthonormal and y those of X in the step's coordinates.
    private void AddTurn()
    {
        var (rows, size) = (_at.Length, _size);
        Array.Clear(_turn);
        for (var i = 0; i < rows; i++)
        {
            if (!(_metric[i] > LeastMetric))
                continue;
            var root = Math.Sqrt(_metric[i]);
            for (var a = 0; a < size; a++)
            {
                var y = _at[i].WeightChange * _q[a * rows + i] / root;
                for (var j = 0; j < size; j++)
                for (var k = 0; k < size; k++)
                    _turn[(a * size + j) * size + k] += y * _w[j * rows + i] * _w[k * rows + i];
            }
        }
        for (var a = 0; a < size; a++)
        for (var b = 0; b <= a; b++)
            _j[a * size + b] +=
                0.5 * Orthonormal.Dot(_turn.AsSpan(a * size * size, size * size), _turn.AsSpan(b * size * size, size * size));
    }
}
