namespace Handhold.Kernels;

/// <summary>The curve of a <see cref="Link"/> and its inverse, right in both tails.</summary>
internal static class LinkCurve
{
    /// <summary>F(η) and 1 - F(η), neither found by subtraction.</summary>
    internal static (double Mu, double OneMinusMu) Rate(Link link, double eta) =>
        link switch
        {
            Link.Probit => (Normal.Cdf(eta), Normal.Cdf(-eta)),
            Link.Cloglog => (-Elementary.Expm1(-Math.Exp(eta)), Math.Exp(-Math.Exp(eta))),
            _ => Elementary.Logistic(eta),
        };

    /// <summary>The η with F(η) = p; infinite at 0 and 1.</summary>
    internal static double Predictor(Link link, double p) =>
        link switch
        {
            Link.Probit => Normal.Quantile(p),
            Link.Cloglog => Math.Log(-Elementary.Log1p(-p)),
            _ => Elementary.Logit(p),
        };
}
