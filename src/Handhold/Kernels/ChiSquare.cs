namespace Handhold.Kernels;

/// <summary>The chi-square distribution with a whole number of degrees of freedom.</summary>
internal static class ChiSquare
{
    /// <summary>P(X above x), x from 0 up.</summary>
    /// <remarks>
    /// Even ν: exp(-x/2) Σ (x/2)^k / k!, k below ν/2. Odd ν: 2 Φ(-√x) + 2 φ(√x) Σ x^(k - 1/2) / (1·3···(2k - 1)), k up to (ν - 1)/2.
    /// Source: Abramowitz and Stegun (1964), 26.4.4 and 26.4.5.
    /// </remarks>
    internal static double Above(double x, int degrees)
    {
        var root = Math.Sqrt(x);
        var odd = degrees % 2 == 1;
        var (sum, term) = odd ? (2 * Normal.Cdf(-root), 2 * Normal.Density(root) * root) : (0.0, Math.Exp(-x / 2));
        for (var k = 1; k <= degrees / 2; k++)
        {
            sum += term;
            term *= odd ? x / (2 * k + 1) : x / (2 * k);
        }

        return Math.Min(1, sum);
    }
}
