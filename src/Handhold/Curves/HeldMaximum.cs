using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The highest log-likelihood, or penalised log-likelihood, with a contrast held.</summary>
internal static class HeldMaximum
{
    /// <param name="problem">Counts, with ceiling and floor fixed.</param>
    /// <param name="estimator">What is maximised.</param>
    /// <param name="separated">Whether the likelihood climbs without end; then its least upper bound is meant.</param>
    /// <param name="held">The contrast and its value.</param>
    internal static double Of(BinomialProblem problem, BinomialEstimator estimator, bool separated, Restriction held)
    {
        SolverOptions options = new() { Held = held };
        if (estimator == BinomialEstimator.BiasReduced)
            return BinomialSolver.BiasReduced(problem, options).PenalisedLogLikelihood ?? double.NaN;
        if (!separated)
            return BinomialSolver.Likelihood(problem, options).LogLikelihood;
        return problem.Columns.Length == 1
            ? OneColumn(problem, held.Value / held.Contrast[0])
            : BinomialSolver.Limit(WithoutPivot(problem, held)).LogLikelihood;
    }

    /// <summary>The same rows without the column of the largest weight, which the restriction expresses by the others and an offset.</summary>
    private static BinomialProblem WithoutPivot(BinomialProblem problem, Restriction held)
    {
        var (columns, weights) = (problem.Columns.Length, held.Contrast);
        var pivot = Enumerable.Range(0, columns).MaxBy(j => Math.Abs(weights[j]));
        var design = new double[problem.Rows * (columns - 1)];
        var offset = new double[problem.Rows];
        for (var row = 0; row < problem.Rows; row++)
        {
            var x = problem.Design.Span.Slice(row * columns, columns);
            var share = x[pivot] / weights[pivot];
            offset[row] = (problem.Offset.IsEmpty ? 0 : problem.Offset.Span[row]) + share * held.Value;
            for (var (j, place) = (0, row * (columns - 1)); j < columns; j++)
                if (j != pivot)
                    design[place++] = x[j] - share * weights[j];
        }

        return new(problem.Columns.RemoveAt(pivot), design, problem.Frames, problem.Keepers)
        {
            Offset = offset,
            Link = problem.Link,
            Ceiling = problem.Ceiling,
            Floor = problem.Floor,
        };
    }

    private static double OneColumn(BinomialProblem problem, double coefficient)
    {
        var (sum, ceiling, floor) = (0.0, problem.Ceiling ?? 1, problem.Floor ?? 0);
        for (var row = 0; row < problem.Rows; row++)
        {
            var (mu, rest) = LinkCurve.Rate(problem.Link, problem.Design.Span[row] * coefficient);
            var (keep, miss) = (floor + (ceiling - floor) * mu, 1 - ceiling + (ceiling - floor) * rest);
            var (keepers, rejects) = (problem.Keepers.Span[row], problem.Frames.Span[row] - problem.Keepers.Span[row]);
            sum += (keepers == 0 ? 0 : keepers * Math.Log(keep)) + (rejects == 0 ? 0 : rejects * Math.Log(miss));
        }

        return sum;
    }
}
