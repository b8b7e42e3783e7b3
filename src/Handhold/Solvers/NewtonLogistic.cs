using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>Maximum likelihood of a logistic line by Newton's method. Allocates nothing.</summary>
internal static class NewtonLogistic
{
    private const double Tolerance = 1e-8;
    private const int Budget = 50;

    /// <summary>Log odds of success = intercept + slope x, with the greatest sum of k log p + (n - k) log(1 - p).</summary>
    /// <remarks>
    /// Score s = sum (k - n p)(1, x), information I = sum n p (1 - p)(1, x)(1, x)'; each step is I^-1 s, halved until the log-likelihood does
    /// not fall; x is centred meanwhile. Converged when a step changes no cell's log odds by more than 1e-8 (the next would change them by
    /// about the square of that); stops short after 50 steps or at a singular information. Separated data always stop short: every step
    /// moves their log odds by about 1.
    /// </remarks>
    /// <param name="x">One value for each cell.</param>
    /// <param name="frames">Trials n of each cell.</param>
    /// <param name="keepers">Successes k of each cell.</param>
    internal static LogisticFit Fit(ReadOnlySpan<double> x, ReadOnlySpan<int> frames, ReadOnlySpan<int> keepers)
    {
        var (centre, total) = (0.0, 0);
        for (var i = 0; i < x.Length; i++)
        {
            centre += frames[i] * x[i];
            total += frames[i];
        }
        centre /= total;
        var reach = 0.0;
        foreach (var at in x)
        {
            reach = Math.Max(reach, Math.Abs(at - centre));
        }
        var (a, b) = (0.0, 0.0);
        var here = Derivatives(x, frames, keepers, centre, a, b);
        for (var iteration = 1; iteration <= Budget; iteration++)
        {
            var determinant = here.I00 * here.I11 - here.I01 * here.I01;
            if (!(determinant > 1e-14 * here.I00 * here.I11))
            {
                break;
            }
            var stepA = (here.I11 * here.S0 - here.I01 * here.S1) / determinant;
            var stepB = (here.I00 * here.S1 - here.I01 * here.S0) / determinant;
            var next = Derivatives(x, frames, keepers, centre, a + stepA, b + stepB);
            for (var halvings = 0; next.LogLikelihood < here.LogLikelihood && halvings < 30; halvings++)
            {
                (stepA, stepB) = (stepA / 2, stepB / 2);
                next = Derivatives(x, frames, keepers, centre, a + stepA, b + stepB);
            }
            (a, b, here) = (a + stepA, b + stepB, next);
            if (Math.Abs(stepA) + Math.Abs(stepB) * reach < Tolerance)
            {
                return new(a - b * centre, b, here.LogLikelihood, iteration, Converged: true);
            }
        }
        return new(a - b * centre, b, here.LogLikelihood, Budget, Converged: false);
    }

    private static Point Derivatives(
        ReadOnlySpan<double> x,
        ReadOnlySpan<int> frames,
        ReadOnlySpan<int> keepers,
        double centre,
        double a,
        double b
    )
    {
        Point sum = default;
        for (var i = 0; i < x.Length; i++)
        {
            var d = x[i] - centre;
            var eta = a + b * d;
            var (p, q) = Elementary.Logistic(eta);
            var (logP, logQ) = (Elementary.LogLogistic(eta), Elementary.LogLogistic(-eta));
            var (kept, rejected) = (keepers[i], frames[i] - keepers[i]);
            var residual = kept * q - rejected * p;
            var weight = frames[i] * p * q;
            sum.LogLikelihood += kept * logP + rejected * logQ;
            sum.S0 += residual;
            sum.S1 += residual * d;
            sum.I00 += weight;
            sum.I01 += weight * d;
            sum.I11 += weight * d * d;
        }
        return sum;
    }

    private struct Point
    {
        internal double LogLikelihood;
        internal double S0;
        internal double S1;
        internal double I00;
        internal double I01;
        internal double I11;
    }
}
