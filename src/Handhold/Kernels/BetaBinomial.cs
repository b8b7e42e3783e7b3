namespace Handhold.Kernels;

/// <summary>The number of keepers in n frames of one burst, whose rate is drawn once from a beta distribution with shapes a and b.</summary>
/// <remarks>Mean rate a / (a+b), correlation of two frames 1 / (a+b+1). Checked by golden/special-functions.</remarks>
internal static class BetaBinomial
{
    /// <summary>The shapes of a mean rate, one less it, and a correlation above 0 and below 1.</summary>
    internal static (double A, double B) Shapes(double rate, double miss, double correlation)
    {
        var size = (1 - correlation) / correlation;
        return (rate * size, miss * size);
    }

    /// <summary>log of the chance of exactly k of n, for 0 ≤ k ≤ n.</summary>
    /// <remarks>
    /// log C(n,k) + log B(k+a, n-k+b) - log B(a, b). Source: Griffiths (1973), Biometrics 29, 637-648. The large terms would cancel, so it is
    /// found as binomial mass × prior density / posterior density of the rate, which is the same at every rate, at the rate (k+a) / (n+a+b).
    /// </remarks>
    internal static double LogMass(double k, double n, double a, double b)
    {
        var sum = n + a + b;
        var (p, oneMinusP) = ((k + a) / sum, (n - k + b) / sum);
        return Binomial.LogMass(k, n, p, oneMinusP)
            + Beta.LogDensityOfLogit(p, oneMinusP, a, b)
            - Beta.LogDensityOfLogit(p, oneMinusP, k + a, n - k + b);
    }

    /// <summary>The chance of at least k of n and of fewer, by adding the masses of the shorter side: min(k, n - k + 1) terms.</summary>
    /// <remarks>Absolute errors of about 1e-14.</remarks>
    internal static (double AtLeast, double Fewer) Tails(int k, int n, double a, double b)
    {
        if (k <= 0 || k > n)
            return k <= 0 ? (1, 0) : (0, 1);
        if (k <= n - k + 1)
        {
            var fewer = Below(k, n, a, b);
            return (1 - fewer, fewer);
        }
        // Rejects are beta-binomial too: at least k keepers is fewer than n - k + 1 rejects.
        var atLeast = Below(n - k + 1, n, b, a);
        return (atLeast, 1 - atLeast);
    }

    // P(fewer than k). From the mass at k - 1 down by ratios, scaled so that a mass that underflows loses nothing.
    private static double Below(int k, double n, double a, double b)
    {
        var (term, sum, scale) = (1.0, 1.0, LogMass(k - 1, n, a, b));
        for (var j = k - 1; j > 0; j--)
        {
            term *= j / (n - j + 1) * ((n - j + b) / (j - 1 + a));
            sum += term;
            if (term < 1e250)
                continue;
            scale += Math.Log(term);
            (term, sum) = (1, sum / term);
        }
        return Math.Min(1, Math.Exp(scale + Math.Log(sum)));
    }
}
