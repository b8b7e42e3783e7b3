namespace Handhold.Kernels;

/// <summary>The number of keepers in n independent frames of one rate. Checked by golden/special-functions.</summary>
internal static class Binomial
{
    /// <summary>log of the chance of exactly k of n, for 0 ≤ k ≤ n and a rate p with its complement.</summary>
    /// <remarks>Inside, C(n,k) p^k (1-p)^(n-k) = n / (k (n-k)) · p^k (1-p)^(n-k) / B(k, n-k).</remarks>
    internal static double LogMass(double k, double n, double p, double oneMinusP)
    {
        if (k == 0)
            return n == 0 ? 0 : n * LogOf(oneMinusP, p);
        if (k == n)
            return n * LogOf(p, oneMinusP);
        return Math.Log(n / (k * (n - k))) + Beta.LogDensityOfLogit(p, oneMinusP, k, n - k);
    }

    /// <summary>The chance of at least k of n and of fewer; the tail away from the mean is never found by subtraction.</summary>
    /// <remarks>P(at least k) is the lower tail at p of the beta distribution with shapes k and n - k + 1.</remarks>
    internal static (double AtLeast, double Fewer) Tails(double k, double n, double p, double oneMinusP)
    {
        if (k <= 0 || k > n)
            return k <= 0 ? (1, 0) : (0, 1);
        var (lower, upper) = Beta.Tails(p, oneMinusP, k, n - k + 1);
        return (lower, upper);
    }

    /// <summary>The chances of 0, 1, ..., n: ratios of neighbours from the likeliest count outwards, so that nothing overflows.</summary>
    internal static double[] Masses(int n, double p, double oneMinusP)
    {
        var masses = new double[n + 1];
        var top = oneMinusP == 0 ? n : (int)Math.Min(n, (n + 1) * p);
        var sum = masses[top] = 1;
        for (var k = top; k < n; k++)
            sum += masses[k + 1] = masses[k] * (p * (n - k)) / (oneMinusP * (k + 1));
        for (var k = top; k > 0; k--)
            sum += masses[k - 1] = masses[k] * (oneMinusP * k) / (p * (n - k + 1));
        for (var k = 0; k <= n; k++)
            masses[k] /= sum;
        return masses;
    }

    private static double LogOf(double p, double oneMinusP) => p > 0.5 ? Elementary.Log1p(-oneMinusP) : Math.Log(p);
}
