using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>A finished maximum: finite coefficients and finite standard errors.</summary>
public sealed class BinomialEstimate
{
    internal BinomialEstimate(
        BinomialEstimator estimator,
        ImmutableArray<double> coefficients,
        ImmutableArray<double> covariance,
        SolverReport report
    ) => (Estimator, Coefficients, Covariance, Report) = (estimator, coefficients, covariance, report);

    /// <summary>What was maximised.</summary>
    public BinomialEstimator Estimator { get; }

    /// <summary>Coefficients of the linear predictor, in the order of the problem's columns.</summary>
    public ImmutableArray<double> Coefficients { get; }

    /// <summary>Their covariance, columns × columns, row-major.</summary>
    /// <remarks>
    /// Likelihood: inverse observed information, an estimated ceiling's and floor's doubt included. Bias-reduced: inverse expected information,
    /// without the penalty. Rows and columns of what was held are zero.
    /// </remarks>
    public ImmutableArray<double> Covariance { get; }

    /// <summary>Σ k log P + (n - k) log(1 - P), without binomial coefficients.</summary>
    public double LogLikelihood { get; internal init; }

    /// <summary>Bias-reduced only: the log-likelihood plus half the log determinant of the expected information.</summary>
    public double? PenalisedLogLikelihood { get; internal init; }

    /// <summary>Twice the log-likelihood lost against the rates k/n of the rows.</summary>
    public double Deviance { get; internal init; }

    /// <summary>The ceiling used or estimated.</summary>
    public double Ceiling { get; internal init; }

    /// <summary>The floor used or estimated.</summary>
    public double Floor { get; internal init; }

    /// <summary>Standard error of an estimated ceiling; null when it was fixed, or ended at 1.</summary>
    public double? CeilingStandardError { get; internal init; }

    /// <summary>Standard error of an estimated floor; null when it was fixed, or ended at 0.</summary>
    public double? FloorStandardError { get; internal init; }

    /// <summary>How the solver came here.</summary>
    public SolverReport Report { get; }

    /// <summary>The rate of a row of a problem with these columns.</summary>
    internal RatePoint At(BinomialProblem problem, int row)
    {
        var size = Coefficients.Length;
        var eta = Orthonormal.Dot(problem.Design.Span.Slice(row * size, size), Coefficients.AsSpan());
        return new(problem.Link, eta, Ceiling, Floor);
    }

    /// <summary>The standard error of one coefficient; 0 when it was held.</summary>
    public double StandardError(int column) => Math.Sqrt(Covariance[column * Coefficients.Length + column]);

    /// <summary>The standard error of a contrast.</summary>
    /// <param name="contrast">One weight a column.</param>
    public double StandardError(ImmutableArray<double> contrast)
    {
        var variance = 0.0;
        for (var i = 0; i < contrast.Length; i++)
        for (var j = 0; j < contrast.Length; j++)
            variance += contrast[i] * Covariance[i * contrast.Length + j] * contrast[j];
        return Math.Sqrt(Math.Max(0, variance));
    }
}
