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

    /// <summary>The x that X stays below with chance p, for an even number of degrees of freedom and p between 0 and 1.</summary>
    /// <remarks>Newton's method on the logarithm of the upper tail, which is concave and falls: after one step every iterate lies right of the root and moves left.</remarks>
    internal static double Quantile(double p, int degrees)
    {
        var (x, target) = ((double)degrees, Elementary.Log1p(-p));
        for (var iteration = 0; iteration < 100; iteration++)
        {
            var (sum, term) = (0.0, 1.0);
            for (var k = 1; k < degrees / 2; k++)
            {
                sum += term;
                term *= x / 2 / k;
            }

            sum += term;
            var next = x + (Math.Log(sum) - x / 2 - target) * 2 * sum / term;
            if (Math.Abs(next - x) <= 1e-14 * x)
                break;
            x = next;
        }

        return x;
    }
}
