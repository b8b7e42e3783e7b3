namespace Handhold.Kernels;

/// <summary>The root of a continuous function between two points.</summary>
/// <remarks>Inverse quadratic interpolation where it is safe, else bisection: Chandrupatla 1997, Advances in Engineering Software 28, 145-149.</remarks>
internal static class Root
{
    private const int MostSteps = 200;

    /// <param name="f">Rises or falls through zero between the ends; a function that has its sign at both ends gives the nearer end.</param>
    /// <param name="low">Left end.</param>
    /// <param name="high">Right end.</param>
    /// <param name="tolerance">Relative to 1 + |root|.</param>
    internal static double Of(Func<double, double> f, double low, double high, double tolerance) =>
        Of(f, (low, f(low)), (high, f(high)), tolerance);

    /// <summary>The same where f is known at the ends.</summary>
    internal static double Of(Func<double, double> f, (double At, double Value) low, (double At, double Value) high, double tolerance)
    {
        // b is the last point, a the end across the root, c the point before.
        var (a, fa) = low;
        var (b, fb) = high;
        if (fa == 0 || fa > 0 == fb > 0)
            return Math.Abs(fa) < Math.Abs(fb) ? a : b;
        var t = 0.5;
        for (var i = 0; i < MostSteps; i++)
        {
            var at = a + t * (b - a);
            var value = f(at);
            double c,
                fc;
            if (value > 0 == fa > 0)
                (c, fc) = (a, fa);
            else
                (c, fc, b, fb) = (b, fb, a, fa);
            (a, fa) = (at, value);
            var best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            var least = tolerance * (1 + Math.Abs(best)) / Math.Abs(b - a);
            if (value == 0 || least > 0.5)
                return best;
            var (xi, phi) = ((a - b) / (c - b), (fa - fb) / (fc - fb));
            t =
                phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
                    ? fa / (fb - fa) * (fc / (fb - fc)) + (c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb))
                    : 0.5;
            t = Math.Clamp(t, least, 1 - least);
        }

        return (a + b) / 2;
    }
}
