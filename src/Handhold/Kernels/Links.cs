namespace Handhold.Kernels;

/// <summary>The curves F of <see cref="Link"/>, with everything Newton's method asks of them. Checked by golden/links.</summary>
/// <remarks>Ratios of derivatives are found as ratios, so that nothing is lost where F or 1 - F falls below 1e-300.</remarks>
internal static class Links
{
    // exp(230) is 1e100: beyond it 1 - F of the complementary log-log is zero whatever it is multiplied by.
    private const double CloglogEnd = 230;

    /// <summary>The curve at a linear predictor.</summary>
    internal static LinkPoint At(Link link, double eta) =>
        link switch
        {
            Link.Logit => Logit(eta),
            Link.Probit => Probit(eta),
            Link.Cloglog => Cloglog(eta),
            _ => throw new ArgumentOutOfRangeException(nameof(link), link, "There is no such link."),
        };

    /// <summary>The linear predictor with F(eta) = p, for p from 0 to 1; ±∞ at the ends.</summary>
    internal static double Inverse(Link link, double p) =>
        link switch
        {
            Link.Logit => Elementary.Logit(p),
            Link.Probit => Normal.Quantile(p),
            Link.Cloglog => Math.Log(-Elementary.Log1p(-p)),
            _ => throw new ArgumentOutOfRangeException(nameof(link), link, "There is no such link."),
        };

    /// <summary>The curve from a floor to a ceiling, and one less it, neither by subtraction.</summary>
    internal static (double Keep, double Miss) Capped(Link link, double eta, double ceiling, double floor)
    {
        var (at, height) = (At(link, eta), ceiling - floor);
        return (floor + height * at.F, 1 - ceiling + height * at.G);
    }

    private static LinkPoint Logit(double eta)
    {
        var e = Math.Exp(-Math.Abs(eta));
        var ((f, g), softplus) = (Elementary.Logistic(eta, e), Elementary.Log1p(e));
        var (logF, logG) = (Math.Min(eta, 0) - softplus, Math.Min(-eta, 0) - softplus);
        return new(f, g, logF, logG, Up: g, Down: f, Bend: g - f, BendChange: -2 * f * g, UpLoss: f, DownGain: g);
    }

    private static LinkPoint Probit(double eta)
    {
        var (f, logF, up, upLoss) = NormalSide(eta);
        var (g, logG, down, downGain) = NormalSide(-eta);
        return new(f, g, logF, logG, up, down, Bend: -eta, BendChange: -1, upLoss, downGain);
    }

    // Φ, log Φ, φ/Φ and φ/Φ + x. Below -30 by Laplace's series S = 1 - 1/x² + 3/x⁴ - ... of Φ = φ S / -x, whose next term is below 1e-14 there.
    private static (double Cdf, double Log, double Ratio, double RatioPlusX) NormalSide(double x)
    {
        var cdf = Normal.Cdf(x);
        if (x > -30)
        {
            var ratio = Normal.Density(x) / cdf;
            return (cdf, x > 1 ? Elementary.Log1p(-Normal.Cdf(-x)) : Math.Log(cdf), ratio, ratio + x);
        }
        var t = 1 / (x * x);
        var lost = t * (1 - 3 * t * (1 - 5 * t * (1 - 7 * t * (1 - 9 * t))));
        var log = -x * x / 2 - Math.Log(-x) - 0.5 * Math.Log(2 * Math.PI) + Elementary.Log1p(-lost);
        return (cdf, log, -x / (1 - lost), -x * lost / (1 - lost));
    }

    private static LinkPoint Cloglog(double eta)
    {
        var e = Math.Exp(Math.Min(eta, CloglogEnd));
        var f = -Elementary.Expm1(-e);
        var up = e == 0 ? 1 : e / Elementary.Expm1(e);
        var series = e * (0.5 + e * (1.0 / 12 - e * e * (1.0 / 720 - e * e / 30240)));
        return new(
            f,
            G: Math.Exp(-e),
            LogF: eta < -36 ? eta - e / 2 : Math.Log(f),
            LogG: -e,
            up,
            Down: e,
            Bend: 1 - e,
            BendChange: -e,
            UpLoss: e < 0.05 ? series : up - 1 + e,
            DownGain: 1
        );
    }
}
