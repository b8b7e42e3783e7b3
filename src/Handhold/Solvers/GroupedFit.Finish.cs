using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class GroupedFit
{
    // Of a coefficient's standard error, or a spread, to either side.
    private const double Difference = 1e-3;
    private const double LeastSpread = 0.1;

    /// <summary>Minus the second derivatives, by central differences of the gradient.</summary>
    internal double[] CurvatureAt(IGroupedLikelihood likelihood, ReadOnlySpan<double> point)
    {
        var size = point.Length;
        var (curvature, moved) = (new double[size * size], point.ToArray());
        var (up, down) = (new double[size], new double[size]);
        for (var a = 0; a < size; a++)
        {
            var step = StepOf(point, a);
            moved[a] = point[a] + step;
            likelihood.At(moved, up);
            moved[a] = point[a] - step;
            likelihood.At(moved, down);
            moved[a] = point[a];
            for (var b = 0; b < size; b++)
                curvature[a * size + b] = (down[b] - up[b]) / (2 * step);
        }
        for (var a = 0; a < size; a++)
        for (var b = 0; b < a; b++)
            curvature[a * size + b] = curvature[b * size + a] = (curvature[a * size + b] + curvature[b * size + a]) / 2;
        return curvature;
    }

    // Orthonormal columns all have much the same standard error: that of one row.
    internal double StepOf(ReadOnlySpan<double> point, int place) =>
        Difference
        * (
            place < Design.Columns
                ? Math.Sqrt(6.0 * Problem.Rows.Rows / Problem.Rows.Frames.Span.ToArray().Sum(n => (double)n))
                : Math.Max(LeastSpread, Math.Abs(point[place]))
        );

    private double[] Invert(GroupedClimb climb)
    {
        int[] free = [.. Enumerable.Range(0, climb.Point.Length).Except(Nothing)];
        var (size, all) = (free.Length, climb.Point.Length);
        var (factor, covariance, column) = (new double[size * size], new double[all * all], new double[size]);
        for (var a = 0; a < size; a++)
        for (var b = 0; b < size; b++)
            factor[a * size + b] = Curvature[free[a] * all + free[b]];
        if (!Cholesky.Factor(factor, size, 1e-12))
            throw new SolverException("The likelihood with levels that vary is level at its top.", Report(climb));
        for (var k = 0; k < size; k++)
        {
            Array.Clear(column);
            column[k] = 1;
            Cholesky.Forward(factor, column);
            Cholesky.Back(factor, column);
            for (var a = 0; a < size; a++)
                covariance[free[a] * all + free[k]] = column[a];
        }
        return covariance;
    }

    private BinomialEstimate Finish(GroupedClimb climb)
    {
        var (columns, all) = (Design.Columns, climb.Point.Length);
        var covariance = new double[columns * columns];
        for (var pass = 0; pass < 2; pass++)
        {
            var source = pass == 0 ? Covariance : covariance;
            var wide = pass == 0 ? all : columns;
            var turned = new double[columns * columns];
            var column = new double[columns];
            for (var k = 0; k < columns; k++)
            {
                for (var j = 0; j < columns; j++)
                    column[j] = source[j * wide + k];
                Design.ToCoefficients(column);
                for (var j = 0; j < columns; j++)
                    turned[k * columns + j] = column[j];
            }
            covariance = turned;
        }
        return new(BinomialEstimator.Likelihood, Coefficients(climb.Point), [.. covariance], Report(climb))
        {
            LogLikelihood = LogLikelihood,
            Deviance = 2 * (Problem.Saturated() - LogLikelihood),
            Ceiling = 1,
            Floor = 0,
        };
    }

    private ImmutableArray<double> Coefficients(ReadOnlySpan<double> point)
    {
        var b = point[..Design.Columns].ToArray();
        Design.ToCoefficients(b);
        return [.. b];
    }

    private SolverReport Report(GroupedClimb climb) => new(Coefficients(climb.Point), climb.LogLikelihood, climb.Taken, climb.Decrement);
}
