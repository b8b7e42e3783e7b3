using System.Runtime.Intrinsics;

namespace Handhold.Kernels;

/// <summary>Logarithms, exponentials and the logistic curve, right in both tails.</summary>
/// <remarks>The framework's own log(1+x) and exp(x)-1 lose every digit below about 1e-15. Checked by golden/special-functions.</remarks>
internal static class Elementary
{
    /// <summary>log(1 + x), for x from -1 up; -∞ at -1, NaN below.</summary>
    /// <remarks>With u = fl(1 + x), log(u) x / (u - 1): the rounding of u cancels. Source: Higham (2002), Accuracy and Stability, 1.14.1.</remarks>
    internal static double Log1p(double x)
    {
        var u = 1 + x;
        if (u == 1)
            return x;
        return double.IsInfinity(u) || u == 0 ? Math.Log(u) : Math.Log(u) * (x / (u - 1));
    }

    /// <summary>exp(x) - 1.</summary>
    /// <remarks>With u = fl(exp(x)), (u - 1) x / log(u): the rounding of u cancels. Source: Higham (2002), Accuracy and Stability, 1.14.1.</remarks>
    internal static double Expm1(double x)
    {
        var u = Math.Exp(x);
        if (u == 1)
            return x;
        return Math.Abs(x) > 40 ? u - 1 : (u - 1) * (x / Math.Log(u));
    }

    /// <summary>log(1 + exp(x)); neither overflows nor reaches 0 before exp(x) does.</summary>
    internal static double Softplus(double x) => Math.Max(x, 0) + Log1p(Math.Exp(-Math.Abs(x)));

    /// <summary>log of the logistic curve, log(1 / (1 + exp(-x))).</summary>
    internal static double LogLogistic(double x) => -Softplus(-x);

    /// <summary>The logistic curve μ = 1 / (1 + exp(-η)) and 1 - μ, neither found by subtraction.</summary>
    internal static (double Mu, double OneMinusMu) Logistic(double eta) => Logistic(eta, Math.Exp(-Math.Abs(eta)));

    /// <summary>The same with e = exp(-|η|) at hand.</summary>
    internal static (double Mu, double OneMinusMu) Logistic(double eta, double e)
    {
        var (big, small) = (1 / (1 + e), e / (1 + e));
        return eta >= 0 ? (big, small) : (small, big);
    }

    /// <summary>The logistic curve μ = 1 / (1 + o) and 1 - μ for odds o = exp(-η) against, from 0 to ∞.</summary>
    internal static (double Mu, double OneMinusMu) AgainstOdds(double odds)
    {
        var mu = 1 / (1 + odds);
        return (mu, double.IsInfinity(odds) ? 1 : odds * mu);
    }

    /// <summary>A logistic curve from a floor to a ceiling, and one less it, neither by subtraction.</summary>
    internal static (double Keep, double Miss) Capped(double eta, double ceiling, double floor)
    {
        var (mu, oneMinusMu) = Logistic(eta);
        return (floor + (ceiling - floor) * mu, 1 - ceiling + (ceiling - floor) * oneMinusMu);
    }

    /// <summary>log Σ exp(logs); -∞ of none.</summary>
    internal static double LogSum(ReadOnlySpan<double> logs)
    {
        var (top, sum) = (double.NegativeInfinity, 0.0);
        foreach (var log in logs)
            top = Math.Max(top, log);
        if (!double.IsFinite(top))
            return top;
        foreach (var log in logs)
            sum += Math.Exp(log - top);
        return top + Math.Log(sum);
    }

    /// <summary>x to a whole power from 0 up, by repeated squaring.</summary>
    internal static double Power(double x, int exponent)
    {
        var power = 1.0;
        for (var e = exponent; e > 0; e >>= 1, x *= x)
            if ((e & 1) == 1)
                power *= x;
        return power;
    }

    /// <summary>The same, eight at a time.</summary>
    internal static Vector512<double> Power(Vector512<double> x, int exponent)
    {
        var power = Vector512<double>.One;
        for (var e = exponent; e > 0; e >>= 1, x *= x)
            if ((e & 1) == 1)
                power *= x;
        return power;
    }

    /// <summary>log(p / (1 - p)), for p from 0 to 1; ±∞ at the ends.</summary>
    /// <remarks>Between a quarter and three quarters log1p((2p - 1) / (1 - p)), whose numerator is exact.</remarks>
    internal static double Logit(double p) => Math.Abs(p - 0.5) <= 0.25 ? Log1p((2 * p - 1) / (1 - p)) : Math.Log(p / (1 - p));
}
