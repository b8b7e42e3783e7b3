namespace Handhold.Solvers;

/// <summary>What is maximised over the coefficients of a <see cref="BinomialProblem"/>.</summary>
public enum BinomialEstimator
{
    /// <summary>The likelihood.</summary>
    Likelihood,

    /// <summary>The likelihood times the square root of the determinant of the expected information (Jeffreys).</summary>
    BiasReduced,
}
