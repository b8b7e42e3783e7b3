using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>The values of a contrast that a likelihood-ratio test at the level does not reject.</summary>
/// <remarks>
/// contrast · b = v is inside when twice the (penalised) log-likelihood lost by holding it is at most the χ² quantile with one degree of freedom; the penalty
/// is always the full design's.
/// </remarks>
public sealed class ProfileInterval
{
    internal ProfileInterval(double? lower, double? upper, double level) => (Lower, Upper, Level) = (lower, upper, level);

    /// <summary>Lower end, exact to 1e-10; absent when unbounded.</summary>
    public double? Lower { get; }

    /// <summary>Upper end, exact to 1e-10; absent when unbounded.</summary>
    public double? Upper { get; }

    /// <summary>Confidence, such as 0.95.</summary>
    public double Level { get; }

    /// <summary>The interval of a contrast; of one coefficient with a single 1 among the weights.</summary>
    /// <param name="problem">The problem; where it separates, the sides that the data bound are still found.</param>
    /// <param name="estimator">What is maximised.</param>
    /// <param name="contrast">One weight a column, not all zero.</param>
    /// <param name="level">Confidence, above 0 and below 1.</param>
    /// <exception cref="SolverException">A solver stopped short.</exception>
    public static ProfileInterval Of(
        BinomialProblem problem,
        BinomialEstimator estimator,
        ImmutableArray<double> contrast,
        double level = 0.95
    ) => throw new NotSupportedException();
}
