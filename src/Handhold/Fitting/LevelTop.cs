using System.Runtime.Intrinsics;

namespace Handhold.Fitting;

/// <summary>Where the integrand over a level's two numbers is highest, and the lower triangle L of its curvature L Lᵀ there.</summary>
internal readonly record struct LevelTop(double Z0, double Z1, double L00, double L10, double L11)
{
    internal double LogScale(int dimension) => -Math.Log(L00) - (dimension == 2 ? Math.Log(L11) : 0);

    /// <summary>The numbers at standard deviates from the top.</summary>
    internal (double Z0, double Z1) At(double x0, double x1)
    {
        var (d0, d1) = Step(x0, x1);
        return (Z0 + d0, Z1 + d1);
    }

    /// <summary>The same, eight at a time.</summary>
    internal (Vector512<double> Z0, Vector512<double> Z1) At(Vector512<double> x0, Vector512<double> x1)
    {
        var step = x1 / L11;
        return ((x0 - step * L10) / L00 + Vector512.Create(Z0), step + Vector512.Create(Z1));
    }

    /// <summary>How far from the top they are.</summary>
    internal (double D0, double D1) Step(double x0, double x1)
    {
        var step = x1 / L11;
        return ((x0 - L10 * step) / L00, step);
    }
}
