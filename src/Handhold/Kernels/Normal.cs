using MathNet.Numerics;

namespace Handhold.Kernels;

/// <summary>The standard normal distribution. The upper tail beyond x is <c>Cdf(-x)</c>, its quantile <c>-Quantile(p)</c>.</summary>
/// <remarks>Relative errors below 2e-15 down to 1e-300. Checked by golden/special-functions.</remarks>
internal static class Normal
{
    private const double SqrtHalf = 0.707106781186547524400844362104849039;
    private const double InverseSqrtTwoPi = 0.398942280401432677939946059934381868;

    /// <summary>φ(x) = exp(-x²/2) / √(2π).</summary>
    internal static double Density(double x)
    {
        var (square, lost) = Square(x);
        return InverseSqrtTwoPi * Math.Exp(-square / 2) * (1 - lost / 2);
    }

    /// <summary>Φ(x), the chance of a value up to x.</summary>
    /// <remarks>
    /// erfc(-x/√2)/2 by the rational approximations of MathNet. They take exp(-z²) of a rounded z², wrong by 1e-13 at x = -37,
    /// so the part lost in rounding is given back as exp(z² - x²/2).
    /// </remarks>
    internal static double Cdf(double x)
    {
        var z = -x * SqrtHalf;
        var half = 0.5 * SpecialFunctions.Erfc(z);
        if (z is < 1 or > 27.5)
            return half;
        var (square, lost) = Square(x);
        return half * (1 + (z * z - square / 2 - lost / 2));
    }

    /// <summary>The x with Φ(x) = p, for p from 0 to 1; ±∞ at the ends, NaN outside.</summary>
    /// <remarks>Source: Wichura (1988), algorithm AS 241 (PPND16), Applied Statistics 37, 477-484.</remarks>
    internal static double Quantile(double p)
    {
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
            return q * Ratio(0.180625 - q * q, CentreTop, CentreBottom);
        if (p is <= 0 or >= 1 or double.NaN)
            return p == 0 ? double.NegativeInfinity
                : p == 1 ? double.PositiveInfinity
                : double.NaN;
        var r = Math.Sqrt(-Math.Log(q < 0 ? p : 1 - p));
        var x = r <= 5 ? Ratio(r - 1.6, MiddleTop, MiddleBottom) : Ratio(r - 5, FarTop, FarBottom);
        return q < 0 ? -x : x;
    }

    // x² as the rounded square and what rounding took away.
    private static (double Rounded, double Lost) Square(double x) =>
        (x * x, double.IsFinite(x) ? Math.FusedMultiplyAdd(x, x, -(x * x)) : 0);

    private static double Ratio(double r, ReadOnlySpan<double> top, ReadOnlySpan<double> bottom)
    {
        var (a, b) = (0.0, 0.0);
        for (var i = top.Length - 1; i >= 0; i--)
            (a, b) = (a * r + top[i], b * r + bottom[i]);
        return a / b;
    }

    private static ReadOnlySpan<double> CentreTop =>
        [
            3.3871328727963666080e0,
            1.3314166789178437745e2,
            1.9715909503065514427e3,
            1.3731693765509461125e4,
            4.5921953931549871457e4,
            6.7265770927008700853e4,
            3.3430575583588128105e4,
            2.5090809287301226727e3,
        ];

    private static ReadOnlySpan<double> CentreBottom =>
        [
            1.0,
            4.2313330701600911252e1,
            6.8718700749205790830e2,
            5.3941960214247511077e3,
            2.1213794301586595867e4,
            3.9307895800092710610e4,
            2.8729085735721942674e4,
            5.2264952788528545610e3,
        ];

    private static ReadOnlySpan<double> MiddleTop =>
        [
            1.42343711074968357734e0,
            4.63033784615654529590e0,
            5.76949722146069140550e0,
            3.64784832476320460504e0,
            1.27045825245236838258e0,
            2.41780725177450611770e-1,
            2.27238449892691845833e-2,
            7.74545014278341407640e-4,
        ];

    private static ReadOnlySpan<double> MiddleBottom =>
        [
            1.0,
            2.05319162663775882187e0,
            1.67638483018380384940e0,
            6.89767334985100004550e-1,
            1.48103976427480074590e-1,
            1.51986665636164571966e-2,
            5.47593808499534494600e-4,
            1.05075007164441684324e-9,
        ];

    private static ReadOnlySpan<double> FarTop =>
        [
            6.65790464350110377720e0,
            5.46378491116411436990e0,
            1.78482653991729133580e0,
            2.96560571828504891230e-1,
            2.65321895265761230930e-2,
            1.24266094738807843860e-3,
            2.71155556874348757815e-5,
            2.01033439929228813265e-7,
        ];

    private static ReadOnlySpan<double> FarBottom =>
        [
            1.0,
            5.99832206555887937690e-1,
            1.36929880922735805310e-1,
            1.48753612908506148525e-2,
            7.86869131145613259100e-4,
            1.84631831751005468180e-5,
            1.42151175831644588870e-7,
            2.04426310338993978564e-15,
        ];
}
