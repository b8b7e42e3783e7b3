using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The likelihood, or penalised likelihood, of one curve's linear predictor: its maximum, and what is lost by holding a rate.</summary>
internal sealed class CurveLikelihood
{
    private const double Nothing = 1e-7;
    private const double Extreme = 1e-12; // a rate as good as 0, or 1
    private readonly Lazy<LimitEstimate> _limit;

    internal CurveLikelihood(DesignLayout layout, BinomialProblem problem, BinomialEstimator estimator, Separation separation)
    {
        (Layout, Problem, Estimator, Separation) = (layout, problem, estimator, separation);
        if (estimator == BinomialEstimator.BiasReduced)
            Estimate = BinomialSolver.BiasReduced(problem);
        else if (!separation.IsSeparated)
            Estimate = BinomialSolver.Likelihood(problem);
        _limit = new(() => BinomialSolver.Limit(problem));
    }

    internal DesignLayout Layout { get; }

    internal BinomialProblem Problem { get; }

    internal BinomialEstimator Estimator { get; }

    internal Separation Separation { get; }

    /// <summary>The maximum; null where the likelihood has none.</summary>
    internal BinomialEstimate? Estimate { get; }

    /// <summary>Where the likelihood climbs to when it has no maximum.</summary>
    internal LimitEstimate Limit => _limit.Value;

    /// <summary>The coefficients; null for those that have no finite value.</summary>
    internal ImmutableArray<double?> Coefficients => Estimate is { } found ? [.. found.Coefficients] : Limit.Coefficients;

    internal double Ceiling => Estimate?.Ceiling ?? Problem.Ceiling ?? 1;

    internal double Floor => Estimate?.Floor ?? Problem.Floor ?? 0;

    internal double LogLikelihood => Estimate?.LogLikelihood ?? Limit.LogLikelihood;

    private double Maximum => Estimate?.PenalisedLogLikelihood ?? LogLikelihood;

    /// <summary>A contrast of the coefficients at the maximum; infinite where the climb takes it there, null where the data leave it open.</summary>
    internal double? Value(ImmutableArray<double> contrast)
    {
        if (Dot(contrast) is { } value)
            return value;
        var (up, down) = (Lost(contrast, Rate(1 - Extreme)) < Nothing, Lost(contrast, Rate(Extreme)) < Nothing);
        return (up, down) switch
        {
            (true, false) => double.PositiveInfinity,
            (false, true) => double.NegativeInfinity,
            _ => null,
        };
    }

    /// <summary>The contrast of finite coefficients; null where one of them is not.</summary>
    internal double? Dot(ImmutableArray<double> contrast)
    {
        var (sum, coefficients) = (0.0, Coefficients);
        for (var i = 0; i < contrast.Length; i++)
        {
            if (contrast[i] == 0)
                continue;
            if (coefficients[i] is not { } coefficient)
                return null;
            sum += contrast[i] * coefficient;
        }

        return sum;
    }

    /// <summary>The rate of a linear predictor.</summary>
    internal double RateOf(double eta) => Floor + (Ceiling - Floor) * LinkCurve.Rate(Problem.Link, eta).Mu;

    /// <summary>The linear predictor of a rate; null at or beyond ceiling and floor.</summary>
    internal double? PredictorOf(double rate) => Predictor(rate, Ceiling, Floor);

    /// <summary>The root of twice the log-likelihood lost by holding the rate of a row at a value: positive where the estimate is above it.</summary>
    internal double SignedRoot(ImmutableArray<double> row, double rate)
    {
        if (Value(row) is not { } eta)
            return 0;
        var size = Math.Sqrt(2 * Math.Max(0, Lost(row, rate)));
        return RateOf(eta) >= rate ? size : -size;
    }

    /// <summary>The log-likelihood lost by holding the rate of a row at a value; ceiling and floor, where estimated, adapt.</summary>
    internal double Lost(ImmutableArray<double> row, double rate) =>
        Math.Max(0, Maximum - AsymptoteSearch.Highest(Problem, rate, (ceiling, floor) => Held(row, rate, ceiling, floor)));

    /// <summary>The log-likelihood lost by holding a contrast of the coefficients at zero.</summary>
    internal double LostByContrast(ImmutableArray<double> contrast) =>
        Math.Max(0, Maximum - HeldMaximum.Of(Problem, Estimator, Separation.IsSeparated, new(contrast, 0)));

    private double Held(ImmutableArray<double> row, double rate, double ceiling, double floor)
    {
        if (Predictor(rate, ceiling, floor) is not { } eta)
            return double.NegativeInfinity;
        var problem = Problem with { Ceiling = ceiling, Floor = floor };
        return HeldMaximum.Of(problem, Estimator, Separation.IsSeparated, new(row, eta));
    }

    private double? Predictor(double rate, double ceiling, double floor) =>
        (rate - floor) / (ceiling - floor) is var share and > 0 and < 1 ? LinkCurve.Predictor(Problem.Link, share) : null;

    private double Rate(double share) => Floor + (Ceiling - Floor) * share;
}
