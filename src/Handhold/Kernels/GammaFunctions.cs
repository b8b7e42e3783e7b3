namespace Handhold.Kernels;

/// <summary>Logarithms of the gamma and beta functions and of binomial coefficients.</summary>
/// <remarks>Absolute errors of a few roundings of the largest term. Checked by golden/special-functions.</remarks>
internal static class GammaFunctions
{
    private const double HalfLogTwoPi = 0.918938533204672741780329736405617640;

    /// <summary>What Stirling's formula leaves out: log Γ(x) - ((x - 1/2) log x - x + log √(2π)), for x above 0.</summary>
    /// <remarks>
    /// From 10 up the series Σ B(2j) / (2j (2j - 1) x^(2j-1)), whose ninth term is below 2e-17; below 10 the step
    /// μ(x) = μ(x + 1) + (x + 1/2) log(1 + 1/x) - 1. Source: NIST DLMF 5.11.1.
    /// </remarks>
    internal static double StirlingRest(double x)
    {
        var steps = 0.0;
        for (; x < 10; x++)
            steps += (x + 0.5) * Elementary.Log1p(1 / x) - 1;
        var z = 1 / (x * x);
        var series =
            1.0 / 12
            + z
                * (
                    -1.0 / 360
                    + z * (1.0 / 1260 + z * (-1.0 / 1680 + z * (1.0 / 1188 + z * (-691.0 / 360360 + z * (1.0 / 156 - z * 3617 / 122400)))))
                );
        return steps + series / x;
    }

    /// <summary>log Γ(x), for x above 0.</summary>
    internal static double LogGamma(double x) => (x - 0.5) * Math.Log(x) - x + HalfLogTwoPi + StirlingRest(x);

    /// <summary>log B(a, b), for shapes above 0.</summary>
    /// <remarks>Stirling's formula with the large terms cancelled by hand: -a log(1 + b/a) - b log(1 + a/b) + log √(2π (1/a + 1/b)) + rests.</remarks>
    internal static double LogBeta(double a, double b) =>
        HalfLogTwoPi
        + 0.5 * Math.Log(1 / a + 1 / b)
        + (StirlingRest(a) + StirlingRest(b) - StirlingRest(a + b))
        - a * Elementary.Log1p(b / a)
        - b * Elementary.Log1p(a / b);

    /// <summary>log of the number of ways to choose k of n, for 0 ≤ k ≤ n.</summary>
    internal static double LogBinomial(double n, double k) => k == 0 || k == n ? 0 : -Math.Log(n + 1) - LogBeta(k + 1, n - k + 1);
}
