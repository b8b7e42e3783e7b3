using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class Ascent
{
    /// <summary>Coefficients b, without the asymptotes.</summary>
    internal ImmutableArray<double> Coefficients()
    {
        var b = Theta[.._columns];
        _design.ToCoefficients(b);
        return [.. b];
    }

    /// <summary>Covariance of b and the free asymptotes, row-major, at the last point a step was taken from.</summary>
    /// <remarks>Inverse observed information; with the penalty inverse expected information without it. What is held varies not.</remarks>
    internal ImmutableArray<double> Covariance()
    {
        var covariance = new double[_size * _size];
        Span<double> column = new double[_size];
        for (var k = _restricted ? 1 : 0; k < _size; k++)
        {
            column.Clear();
            column[k] = 1;
            if (!_penalised)
                Cholesky.Back(_j, column);
            if (_restricted)
                Mirror(column);
            Orthonormal.Solve(_r, column);
            _design.ToCoefficients(column[.._columns]);
            for (var i = 0; i < _size; i++)
            for (var j = 0; j < _size; j++)
                covariance[i * _size + j] += column[i] * column[j];
        }
        return [.. covariance];
    }

    /// <summary>The deviance at the last point.</summary>
    internal double Deviance()
    {
        var sum = 0.0;
        for (var i = 0; i < _at.Length; i++)
            sum += _at[i].Deviance(_keepers[i], _rejects[i]);
        return sum;
    }

    internal SolverReport Report() => new(Coefficients(), Objective, Steps, Decrement);
}
