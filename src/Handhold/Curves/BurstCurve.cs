using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The logistic curve averaged over a normal shift, and its inverse: what a burst's luck makes of a curve from zero to one.</summary>
/// <remarks>
/// M(u) = E L(u + s Z), u in logits, s the luck in logits. Trapezoid sums whose step shrinks with s (the logistic function's poles lie at ±iπ), tabulated
/// four to the logit and interpolated by six points: within 1e-6.
/// </remarks>
internal sealed class BurstCurve
{
    private const double Reach = 6;
    private const double Largest = 40; // logits
    private const int PerLogit = 4;
    private const int Count = 2 * (int)Largest * PerLogit + 1;
    private readonly double[] _mean = new double[Count];
    private readonly double[] _inverse = new double[Count];

    internal BurstCurve(double luck)
    {
        for (var i = 0; i < Count; i++)
            _mean[i] = LogitOfMean(At(i), luck);
        var k = 0;
        for (var i = 0; i < Count; i++)
        {
            // The means rise: k is the last node at or below the target, as far as the table goes.
            while (k < Count - 2 && _mean[k + 1] <= At(i))
                k++;
            _inverse[i] = Inverse(At(i), k, luck);
        }
    }

    /// <summary>M at u logits.</summary>
    internal double Mean(double u) => Elementary.Logistic(Interpolate(_mean, u)).Mu;

    /// <summary>The u at which M has the logit <paramref name="logit"/>.</summary>
    internal double Inverse(double logit) => Interpolate(_inverse, logit);

    private static double At(int index) => index / (double)PerLogit - Largest;

    private double Inverse(double logit, int node, double luck)
    {
        var (low, high) = (_mean[node], _mean[node + 1]);
        var u = At(node) + (logit - low) / (high - low) / PerLogit;
        for (var i = 0; i < 3; i++)
        {
            const double Small = 1e-4;
            var miss = LogitOfMean(u, luck) - logit;
            var slope = (LogitOfMean(u + Small, luck) - LogitOfMean(u - Small, luck)) / (2 * Small);
            u -= miss / slope;
            if (Math.Abs(miss) < 1e-10)
                break;
        }

        return u;
    }

    private static double LogitOfMean(double u, double luck)
    {
        var step = Math.Min(0.6, 1.2 / Math.Max(luck, 1e-9));
        var nodes = (int)Math.Ceiling(Reach / step);
        var (mean, rest, mass) = (0.0, 0.0, 0.0);
        for (var i = -nodes; i <= nodes; i++)
        {
            var z = i * step;
            var weight = Math.Exp(-0.5 * z * z);
            var (mu, oneMinusMu) = Elementary.Logistic(u + luck * z);
            mass += weight;
            mean += weight * mu;
            rest += weight * oneMinusMu;
        }

        return Math.Log(mean / rest);
    }

    /// <summary>Six-point interpolation; beyond the table a straight line of slope one, as the tails are.</summary>
    private static double Interpolate(double[] values, double at)
    {
        var t = (at + Largest) * PerLogit;
        if (t <= 0)
            return values[0] + at + Largest;
        if (t >= Count - 1)
            return values[^1] + at - Largest;
        var first = Math.Clamp((int)t - 2, 0, Count - 6);
        var x = t - first;
        var (a, b, c, d, e, f) = (x, x - 1, x - 2, x - 3, x - 4, x - 5);
        return values[first] * (b * c * d * e * f) / -120
            + values[first + 1] * (a * c * d * e * f) / 24
            + values[first + 2] * (a * b * d * e * f) / -12
            + values[first + 3] * (a * b * c * e * f) / 12
            + values[first + 4] * (a * b * c * d * f) / -24
            + values[first + 5] * (a * b * c * d * e) / 120;
    }
}
