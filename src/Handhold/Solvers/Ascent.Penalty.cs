using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class Ascent
{
    private readonly double[] _turn;

    // Half the log determinant of the expected information XᵀWX, whose factor stays for the step.
    private double Penalty()
    {
        var rows = _at.Length;
        for (var i = 0; i < rows; i++)
        {
            var root = Math.Sqrt(Frames(i) * _at[i].Weight);
            for (var j = 0; j < _size; j++)
                _q[j * rows + i] = root * _design.Q[j * rows + i];
        }
        if (Orthonormal.Factor(_q, rows, _size, _r, 0) > 0)
            return double.NegativeInfinity;
        var sum = _design.LogDeterminant;
        for (var j = 0; j < _size; j++)
            sum += Math.Log(_r[j * _size + j]);
        return sum;
    }

    // Half tr(M_a M_b) of the penalty's curvature, M_a = Σ (log w)' y_a q qᵀ, where q are the rows of the factor and y = q/√w.
    private void AddTurn()
    {
        var (rows, size) = (_at.Length, _size);
        Array.Clear(_turn);
        for (var i = 0; i < rows; i++)
        {
            var root = Math.Sqrt(Metric(i));
            if (!(root * root > LeastMetric))
                continue;
            for (var a = 0; a < size; a++)
            {
                var y = _at[i].WeightChange * _q[a * rows + i] / root;
                for (var j = 0; j < size; j++)
                for (var k = 0; k < size; k++)
                    _turn[(a * size + j) * size + k] += y * _q[j * rows + i] * _q[k * rows + i];
            }
        }
        for (var a = 0; a < size; a++)
        for (var b = 0; b <= a; b++)
            _j[a * size + b] +=
                0.5 * Orthonormal.Dot(_turn.AsSpan(a * size * size, size * size), _turn.AsSpan(b * size * size, size * size));
    }
}
