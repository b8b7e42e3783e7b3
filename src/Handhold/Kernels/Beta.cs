namespace Handhold.Kernels;

/// <summary>The beta distribution with shapes a and b above 0. Values come and go as a pair x, 1 - x, so that neither end loses digits.</summary>
/// <remarks>Relative errors below 1e-12 in the nearer tail for shapes from 0.05 to 1e6. Checked by golden/special-functions.</remarks>
internal static class Beta
{
    /// <summary>The chance of a value up to x and of one beyond; the tail away from the mean is never found by subtraction.</summary>
    internal static (double Lower, double Upper) Tails(double x, double oneMinusX, double a, double b)
    {
        if (x <= 0 || oneMinusX <= 0)
            return x <= 0 ? (0, 1) : (1, 0);
        var belowMean = FractionConverges(x, a, b);
        var near = Math.Exp(belowMean ? LogByFraction(x, oneMinusX, a, b) : LogByFraction(oneMinusX, x, b, a));
        return belowMean ? (near, 1 - near) : (1 - near, near);
    }

    /// <summary>The x, and 1 - x, that a value stays below with chance p, for p from 0 to 1. For a small upper tail q: <c>Quantile(q, b, a)</c>, swapped.</summary>
    /// <remarks>
    /// Newton's method on the log of the nearer tail as a function of u = log(x / (1 - x)). There the density of u, x^a (1-x)^b / B(a, b),
    /// is log-concave, so the log tail is concave and increasing: after one step every iterate lies left of the root and moves right.
    /// </remarks>
    internal static (double X, double OneMinusX) Quantile(double p, double a, double b)
    {
        if (p > 0.5)
        {
            var (y, oneMinusY) = Quantile(1 - p, b, a);
            return (oneMinusY, y);
        }
        var u = Math.Log(a / b);
        var (x, oneMinusX) = Elementary.Logistic(u);
        for (var iteration = 0; iteration < 100 && x > 0; iteration++)
        {
            var tail = LogLower(x, oneMinusX, a, b);
            var step = (Math.Log(p) - tail) * Math.Exp(tail - LogDensityOfLogit(x, oneMinusX, a, b));
            if (iteration > 0 && step <= 1e-16 * Math.Abs(u))
                break;
            u += step;
            (x, oneMinusX) = Elementary.Logistic(u);
        }
        return (x, oneMinusX);
    }

    /// <summary>log of x^a (1 - x)^b / B(a, b): the density of log(x / (1 - x)).</summary>
    /// <remarks>
    /// √(ab / 2π(a+b)) exp(rests + a φ(x (a+b)/a) + b φ((1-x) (a+b)/b)) with φ(r) = log r - r + 1 ≤ 0, so that nothing large cancels.
    /// The idea of Loader (2000), "Fast and accurate computation of binomial probabilities".
    /// </remarks>
    internal static double LogDensityOfLogit(double x, double oneMinusX, double a, double b)
    {
        var (sum, surplus) = (a + b, Surplus(x, oneMinusX, a, b));
        return 0.5 * Math.Log(a / sum * b / (2 * Math.PI))
            + (GammaFunctions.StirlingRest(sum) - GammaFunctions.StirlingRest(a) - GammaFunctions.StirlingRest(b))
            + a * LogLess(surplus / a, x * sum / a)
            + b * LogLess(-surplus / b, oneMinusX * sum / b);
    }

    // x (a+b) - a = b - (1-x)(a+b), from the smaller of x and 1-x.
    private static double Surplus(double x, double oneMinusX, double a, double b) =>
        x <= oneMinusX ? Math.FusedMultiplyAdd(x, a + b, -a) : -Math.FusedMultiplyAdd(oneMinusX, a + b, -b);

    // log(ratio) - ratio + 1, where ratio = 1 + excess.
    private static double LogLess(double excess, double ratio)
    {
        if (Math.Abs(excess) > 0.4)
            return Math.Log(ratio) - excess;
        // log(1 + t) = 2 atanh(r), r = t / (2 + t); and 2r - t = -t r.
        var r = excess / (2 + excess);
        var (square, power, series) = (r * r, 1.0, 0.0);
        for (var odd = 3; power > 1e-18; odd += 2)
        {
            series += power / odd;
            power *= square;
        }
        return r * (2 * square * series - excess);
    }

    private static double LogLower(double x, double oneMinusX, double a, double b) =>
        FractionConverges(x, a, b) ? LogByFraction(x, oneMinusX, a, b) : Elementary.Log1p(-Math.Exp(LogByFraction(oneMinusX, x, b, a)));

    private static bool FractionConverges(double x, double a, double b) => x <= (a + 1) / (a + b + 2);

    // The lower tail is x^a (1-x)^b / B(a, b) over a continued fraction, evaluated from the front (Lentz); the form in the surplus does not
    // cancel near the mean. Source: DiDonato and Morris (1992), ACM Transactions on Mathematical Software 18, 360-373 (BFRAC).
    private static double LogByFraction(double x, double oneMinusX, double a, double b)
    {
        var lead = 1 - Surplus(x, oneMinusX, a, b);
        var value = a * lead / (a + 1);
        var (c, d) = (value, 0.0);
        for (var m = 1.0; m < 100_000; m++)
        {
            var odd = a + 2 * m - 1;
            var top = (a + m - 1) / odd * ((a + b + m - 1) / odd) * (m * (b - m) * x * x);
            var bottom = m + m * (b - m) * x / odd + (a + m) * (lead + m * (1 + oneMinusX)) / (odd + 2);
            (c, d) = (bottom + top / c, 1 / (bottom + top * d));
            value *= c * d;
            if (Math.Abs(c * d - 1) <= 3e-16)
                break;
        }
        return LogDensityOfLogit(x, oneMinusX, a, b) - Math.Log(value);
    }
}
