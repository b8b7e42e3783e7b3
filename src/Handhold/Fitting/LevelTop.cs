namespace Handhold.Fitting;

/// <summary>Where the integrand over a level's two numbers is highest, and the lower triangle L of its curvature L Lᵀ there.</summary>
internal readonly record struct LevelTop(double Z0, double Z1, double L00, double L10, double L11)
{
    internal double LogScale(int dimension) => -Math.Log(L00) - (dimension == 2 ? Math.Log(L11) : 0);

    /// <summary>The numbers at standard deviates from the top.</summary>
    internal (double Z0, double Z1) At(double x0, double x1)
    {
        var step = x1 / L11;
        return (Z0 + (x0 - L10 * step) / L00, Z1 + step);
    }
}
