using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>What Laplace's method leaves out of a grouped log-likelihood, to the next order, and how far that would move the estimates.</summary>
/// <remarks>
/// With h₃ and h₄ the third and fourth derivatives of h at û and G = H⁻¹, the next terms of log ∫ exp h are Σ h₄ G G / 8 + Σ h₃ h₃ (G G G / 8 + G G G / 12), where the first product pairs
/// indices within an h₃ and the second between the two. Found family by family: levels that share no row share no term. The estimates move by V times its gradient. Source: Shun and McCullagh
/// (1995), Journal of the Royal Statistical Society B 57, 749-760.
/// </remarks>
internal sealed class GroupedRemainder
{
    // Pairs of combinations of levels in one family; beyond, families are too entangled for the sum.
    private const long MostPairs = 2_000_000;

    private readonly GroupedFit _fit;
    private readonly GroupedLaplace[] _families;
    private readonly double[] _gradient;

    private GroupedRemainder(GroupedFit fit, GroupedLaplace[] families) =>
        (_fit, _families, _gradient) = (fit, families, new double[fit.Top.Length]);

    /// <summary>By how many standard errors each number of the fit's top would move; null where levels are too entangled to tell.</summary>
    internal static double[]? Shifts(GroupedFit fit)
    {
        TurnedDesign basis = new(fit.Design, []);
        GroupedLaplace[] families = [.. fit.Problem.Parts(1).Select(p => new GroupedLaplace(p.Part, basis, p.First, fit.Bases))];
        return families.Any(f => (long)f.Kinds * f.Kinds > MostPairs) ? null : new GroupedRemainder(fit, families).Shifts();
    }

    private double[] Shifts()
    {
        var (size, point) = (_fit.Top.Length, _fit.Top.ToArray());
        var slope = new double[size];
        for (var j = 0; j < size; j++)
        {
            var step = 10 * _fit.StepOf(_fit.Top, j);
            point[j] = _fit.Top[j] + step;
            slope[j] = At(point);
            point[j] = _fit.Top[j] - step;
            slope[j] = (slope[j] - At(point)) / (2 * step);
            point[j] = _fit.Top[j];
        }
        var shifts = new double[size];
        for (var j = 0; j < size; j++)
            if (_fit.Covariance[j * size + j] is > 0 and var variance)
                shifts[j] = Orthonormal.Dot(_fit.Covariance.AsSpan(j * size, size), slope) / Math.Sqrt(variance);
        return shifts;
    }

    /// <summary>The terms left out at a point.</summary>
    internal double At(ReadOnlySpan<double> point)
    {
        var sum = 0.0;
        foreach (var family in _families)
        {
            family.At(point, _gradient);
            sum += family.Remainder();
        }
        return sum;
    }
}
