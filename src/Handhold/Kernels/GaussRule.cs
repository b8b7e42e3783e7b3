using System.Collections.Immutable;

namespace Handhold.Kernels;

/// <summary>A Gauss quadrature rule: nodes in ascending order and weights that add up to 1. Make it once and keep it.</summary>
/// <remarks>
/// Orthonormal polynomials of a symmetric measure follow s(j+1) p(j+1) = x p(j) - s(j) p(j-1). The sequence p(0), …, p(n) at x changes sign
/// once for every root of p(n) beyond x, so bisection on that count finds each node to the last digit; its weight is 1 / Σ p(j)², j below n.
/// Source: Golub and Welsch (1969), Mathematics of Computation 23, 221-230, and Sturm's theorem. Checked by golden/special-functions.
/// </remarks>
internal sealed class GaussRule
{
    private GaussRule(int count, double bound, Func<int, double> coefficient)
    {
        var s = new double[count + 1];
        for (var j = 1; j <= count; j++)
            s[j] = coefficient(j);
        var (nodes, weights) = (new double[count], new double[count]);
        for (var i = 0; i < (count + 1) / 2; i++)
        {
            var node = 2 * i + 1 == count ? 0 : Node(s, i, bound);
            (nodes[i], nodes[count - 1 - i]) = (-node, node);
            weights[i] = weights[count - 1 - i] = Weight(s, node);
        }
        Nodes = ImmutableArray.Create(nodes);
        Weights = ImmutableArray.Create(weights);
    }

    /// <summary>Where the integrand is asked, ascending.</summary>
    internal ImmutableArray<double> Nodes { get; }

    /// <summary>What each answer weighs; in all 1.</summary>
    internal ImmutableArray<double> Weights { get; }

    /// <summary>The rule for the standard normal distribution, exact for polynomials up to degree 2 count - 1; count from 1 to 200.</summary>
    internal static GaussRule Hermite(int count) => new(count, Math.Sqrt(4 * count + 2), j => Math.Sqrt(j));

    /// <summary>The rule for the uniform distribution on -1 to 1, exact for polynomials up to degree 2 count - 1; count from 1 to 200.</summary>
    internal static GaussRule Legendre(int count) => new(count, 1, j => j / Math.Sqrt(4.0 * j * j - 1));

    // The node with `above` nodes beyond it, between 0 and the bound.
    private static double Node(double[] s, int above, double bound)
    {
        var (low, high) = (0.0, bound);
        while (true)
        {
            var middle = 0.5 * (low + high);
            if (middle <= low || middle >= high)
                return middle;
            if (RootsBeyond(s, middle) > above)
                low = middle;
            else
                high = middle;
        }
    }

    private static int RootsBeyond(double[] s, double x)
    {
        var (before, now, changes) = (0.0, 1.0, 0);
        for (var j = 1; j < s.Length; j++)
        {
            (before, now) = (now, (x * now - s[j - 1] * before) / s[j]);
            if (now < 0 != before < 0)
                changes++;
        }
        return changes;
    }

    private static double Weight(double[] s, double x)
    {
        var (before, now, sum) = (0.0, 1.0, 1.0);
        for (var j = 1; j < s.Length - 1; j++)
        {
            (before, now) = (now, (x * now - s[j - 1] * before) / s[j]);
            sum += now * now;
        }
        return 1 / sum;
    }
}
