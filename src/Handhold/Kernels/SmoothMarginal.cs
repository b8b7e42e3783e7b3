using MathNet.Numerics.Interpolation;

namespace Handhold.Kernels;

/// <summary>A marginal density known by its logarithm at uniform nodes: moments by the trapezoid rule, quantiles by inverting the distribution function of a spline through the logarithms.</summary>
internal sealed class SmoothMarginal
{
    private const int PartsPerStep = 32;
    private readonly CubicSpline _logDensity;
    private readonly double _from;
    private readonly double _part;
    private readonly double[] _cumulative;
    private readonly double _moment;

    /// <param name="start">First node.</param>
    /// <param name="step">Distance of nodes.</param>
    /// <param name="logDensity">Log of the density (any constant) at the nodes; at least two.</param>
    /// <param name="even">The first node is 0 and the density is even: only the right half counts.</param>
    internal SmoothMarginal(double start, double step, ReadOnlySpan<double> logDensity, bool even = false)
    {
        var mirrored = even ? logDensity.Length - 1 : 0;
        var (x, y) = (new double[logDensity.Length + mirrored], new double[logDensity.Length + mirrored]);
        var top = double.NegativeInfinity;
        foreach (var log in logDensity)
            top = Math.Max(top, log);
        for (var i = 0; i < x.Length; i++)
        {
            x[i] = start + (i - mirrored) * step;
            y[i] = Math.Max(logDensity[Math.Abs(i - mirrored)] - top, -700);
        }

        _logDensity = CubicSpline.InterpolateNaturalSorted(x, y);
        (_from, _part) = (start, step / PartsPerStep);
        _cumulative = new double[(logDensity.Length - 1) * PartsPerStep + 1];
        var left = Math.Exp(_logDensity.Interpolate(start));
        for (var i = 1; i < _cumulative.Length; i++)
        {
            var at = start + i * _part;
            var right = Math.Exp(_logDensity.Interpolate(at));
            var middle = 4 * Math.Exp(_logDensity.Interpolate(at - _part / 2));
            _cumulative[i] = _cumulative[i - 1] + (left + middle + right) / 6;
            _moment += (left * (at - _part) + middle * (at - _part / 2) + right * at) / 6;
            left = right;
        }
    }

    /// <summary>Log of the density, up to a constant.</summary>
    internal double LogDensity(double at) => _logDensity.Interpolate(at);

    /// <summary>Mean of the density between its first and last node.</summary>
    internal double Mean => _moment / _cumulative[^1];

    /// <summary>The value below which the density has mass <paramref name="p"/>.</summary>
    internal double Quantile(double p)
    {
        var mass = p * _cumulative[^1];
        var i = Array.BinarySearch(_cumulative, mass);
        if (i < 0)
            i = Math.Max(1, ~i);
        i = Math.Clamp(i, 1, _cumulative.Length - 1);
        var width = _cumulative[i] - _cumulative[i - 1];
        return _from + (i - 1 + (width > 0 ? (mass - _cumulative[i - 1]) / width : 0)) * _part;
    }
}
