namespace Handhold;

/// <summary>The shape F of the keeper curve, from the linear predictor eta to a rate between 0 and 1.</summary>
public enum Link
{
    /// <summary>F(eta) = 1 / (1 + exp(-eta)).</summary>
    Logit,

    /// <summary>F(eta) = the standard normal distribution function.</summary>
    Probit,

    /// <summary>F(eta) = 1 - exp(-exp(eta)), the complementary log-log curve.</summary>
    Cloglog,
}
