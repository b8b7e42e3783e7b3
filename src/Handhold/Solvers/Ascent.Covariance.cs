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
        for (var k = 0; k < _size; k++)
        {
            column.Clear();
            column[k] = 1;
            if (_penalised)
                Orthonormal.Solve(_expected, column);
            else if (k > 0 || !_restricted)
                ToTheta(column);
            else
                continue;
            Add(covariance, column, 1);
        }
        if (_penalised && _restricted)
        {
            // What holding the contrast takes away: V a aᵀV / aᵀVa.
            _held.CopyTo(column);
            Orthonormal.SolveTransposed(_expected, column);
            var variance = Orthonormal.Dot(column, column);
            Orthonormal.Solve(_expected, column);
            Add(covariance, column, -1 / variance);
        }
        return [.. covariance];
    }

    // From the coordinates of the curvature's factor.
    private void ToTheta(Span<double> column)
    {
        Cholesky.Back(_j, column);
        if (_restricted)
            Mirror(column);
        Orthonormal.Solve(_r, column);
    }

    private void Add(double[] covariance, Span<double> theta, double share)
    {
        _design.ToCoefficients(theta[.._columns]);
        for (var i = 0; i < _size; i++)
        for (var j = 0; j < _size; j++)
            covariance[i * _size + j] += share * theta[i] * theta[j];
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
