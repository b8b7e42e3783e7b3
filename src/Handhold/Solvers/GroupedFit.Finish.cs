using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class GroupedFit
{
    // Of a coefficient's standard error, or a spread, to either side.
    private const double Difference = 1e-3;
    private const double LeastSpread = 0.1;

    /// <summary>Minus the second derivatives, by central differences of the gradient.</summary>
    internal double[] CurvatureAt(IGroupedLikelihood likelihood, ReadOnlySpan<double> point, CancellationToken cancellation)
    {
        var size = point.Length;
        var (curvature, moved) = (new double[size * size], point.ToArray());
        var (up, down) = (new double[size], new double[size]);
        for (var a = 0; a < size; a++)
        {
            cancellation.ThrowIfCancellationRequested();
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

    internal double StepOf(ReadOnlySpan<double> point, int place) =>
        place < Design.Columns ? _columnStep : Difference * Math.Max(LeastSpread, Math.Abs(point[place]));

    private (double[] Covariance, BinomialEstimate Estimate) Finish(GroupedClimb climb)
    {
        int[] free = [.. Enumerable.Range(0, climb.Point.Length).Except(Nothing)];
        var (size, all, columns) = (free.Length, climb.Point.Length, Design.Columns);
        var factor = new double[size * size];
        for (var a = 0; a < size; a++)
        for (var b = 0; b < size; b++)
            factor[a * size + b] = Curvature[free[a] * all + free[b]];
        if (!Cholesky.Factor(factor, size, 1e-12))
            throw new SolverException("The likelihood with levels that vary is level at its top.", Report(climb));
        var (covariance, ofCoefficients) = (new double[all * all], new double[columns * columns]);
        for (var k = 0; k < size; k++)
        {
            var (column, wide) = (new double[size], new double[all]);
            column[k] = 1;
            Cholesky.Back(factor, column);
            for (var a = 0; a < size; a++)
                wide[free[a]] = column[a];
            AddSquare(covariance, wide);
            Design.ToCoefficients(wide.AsSpan(0, columns));
            AddSquare(ofCoefficients, wide.AsSpan(0, columns));
        }
        return (
            covariance,
            new(BinomialEstimator.Likelihood, Coefficients(climb.Point), [.. ofCoefficients], Report(climb))
            {
                LogLikelihood = LogLikelihood,
                Deviance = 2 * (Problem.Saturated() - LogLikelihood),
                Ceiling = 1,
                Floor = 0,
            }
        );
    }

    private static void AddSquare(double[] square, ReadOnlySpan<double> column)
    {
        for (var a = 0; a < column.Length; a++)
        for (var b = 0; b < column.Length; b++)
            square[a * column.Length + b] += column[a] * column[b];
    }

    private ImmutableArray<double> Coefficients(ReadOnlySpan<double> point)
    {
        var b = point[..Design.Columns].ToArray();
        Design.ToCoefficients(b);
        return [.. b];
    }

    private SolverReport Report(GroupedClimb climb) => new(Coefficients(climb.Point), climb.LogLikelihood, climb.Taken, climb.Decrement);
}
