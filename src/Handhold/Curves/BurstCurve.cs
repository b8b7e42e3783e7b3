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
    private const double Flat = 18; // logits: farther out than this and the luck's square, curve and inverse are straight
    private const int PerLogit = 4;
    private readonly double _largest;
    private readonly double[] _mean;
    private readonly double[] _inverse;

    internal BurstCurve(double luck)
    {
        var half = PerLogit * (int)Math.Ceiling(Math.Min(Flat + luck * luck, 60));
        _largest = half / (double)PerLogit;
        (_mean, _inverse) = (new double[2 * half + 1], new double[2 * half + 1]);
        for (var i = 0; i < _mean.Length; i++)
            _mean[i] = LogitOfMean(At(i), luck).Value;
        var k = 0;
        for (var i = 0; i < _mean.Length; i++)
        {
            // The means rise: k is the last node at or below the target, as far as the table goes.
            while (k < _mean.Length - 2 && _mean[k + 1] <= At(i))
                k++;
            _inverse[i] = Inverse(At(i), k, luck);
        }
    }

    /// <summary>M at u logits.</summary>
    internal double Mean(double u) => Elementary.Logistic(Interpolate(_mean, u)).Mu;

    /// <summary>The u at which M has the logit <paramref name="logit"/>.</summary>
    internal double Inverse(double logit) => Interpolate(_inverse, logit);

    private double At(int index) => index / (double)PerLogit - _largest;

    private double Inverse(double logit, int node, double luck)
    {
        var (low, high) = (_mean[node], _mean[node + 1]);
        var u = At(node) + (logit - low) / (high - low) / PerLogit;
        for (var i = 0; i < 4; i++)
        {
            var (value, slope) = LogitOfMean(u, luck);
            u -= (value - logit) / slope;
            if (Math.Abs(value - logit) < 1e-7) // Newton squares the error
                break;
        }

        return u;
    }

    private static (double Value, double Slope) LogitOfMean(double u, double luck)
    {
        var step = Math.Min(0.6, 1.2 / Math.Max(luck, 1e-9));
        var nodes = (int)Math.Ceiling(Reach / step);
        var (mean, rest, rise) = (0.0, 0.0, 0.0);
        for (var i = -nodes; i <= nodes; i++)
        {
            var z = i * step;
            var weight = Math.Exp(-0.5 * z * z);
            var (mu, oneMinusMu) = Elementary.Logistic(u + luck * z);
            mean += weight * mu;
            rest += weight * oneMinusMu;
            rise += weight * mu * oneMinusMu;
        }

        return (Math.Log(mean / rest), rise / mean + rise / rest);
    }

    /// <summary>Six-point interpolation; beyond the table a straight line of slope one, as the tails are.</summary>
    private double Interpolate(double[] values, double at)
    {
        var t = (at + _largest) * PerLogit;
        if (t <= 0)
            return values[0] + at + _largest;
        if (t >= values.Length - 1)
            return values[^1] + at - _largest;
        var first = Math.Clamp((int)t - 2, 0, values.Length - 6);
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
