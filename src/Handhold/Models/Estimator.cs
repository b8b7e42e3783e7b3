namespace Handhold;

/// <summary>How a curve is estimated. Named on every result.</summary>
public enum Estimator
{
    /// <summary>The posterior under visible priors: always finite, and its doubt is in every prediction.</summary>
    Posterior,

    /// <summary>Maximum of the likelihood with Jeffreys' penalty on the linear coefficients: finite also where keepers and rejects separate.</summary>
    BiasReduced,

    /// <summary>Maximum likelihood: says plainly where no finite estimate exists.</summary>
    Likelihood,
}
