using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Where a <see cref="LogisticLine"/> ended.</summary>
/// <param name="At">The maximum.</param>
/// <param name="Last">The last step there.</param>
/// <param name="LogLikelihood">Bernoulli scale: no binomial coefficients.</param>
/// <param name="Deviance">Twice the log-likelihood lost against the rates of the rows.</param>
/// <param name="IsPenalised">Whether the penalty counts.</param>
internal readonly record struct LogisticFit(LinePoint At, LineDirection Last, double LogLikelihood, double Deviance, bool IsPenalised)
{
    /// <summary>No maximum was reached.</summary>
    internal static LogisticFit None => new(default, default, double.NaN, double.NaN, false);

    internal bool Converged => Last.IsMaximum;

    /// <summary>Log odds at x = 0.</summary>
    internal double Intercept => At.Predictor(0);

    internal double Slope => At.Slope;

    /// <summary>What was maximised.</summary>
    internal double Objective => IsPenalised ? LogLikelihood + 0.5 * Math.Log(Last.Weight * Last.Spread) : LogLikelihood;

    /// <summary>Inverse expected information of the intercept; with the logistic curve the observed information is the same.</summary>
    internal double InterceptVariance => 1 / Last.Weight + At.Centre * At.Centre / Last.Spread;

    internal double Covariance => -At.Centre / Last.Spread;

    internal double SlopeVariance => 1 / Last.Spread;

    internal BinomialEstimate Estimate(BinomialEstimator estimator)
    {
        ImmutableArray<double> coefficients = [Intercept, Slope];
        return new(
            estimator,
            coefficients,
            [InterceptVariance, Covariance, Covariance, SlopeVariance],
            new(coefficients, Objective, At.Steps, Last.Decrement)
        )
        {
            LogLikelihood = LogLikelihood,
            PenalisedLogLikelihood = IsPenalised ? Objective : null,
            Deviance = Deviance,
            Ceiling = 1,
            Floor = 0,
        };
    }
}
