namespace Handhold.Kernels;

/// <summary>A smooth function, such as a log-likelihood or a density, known at uniform nodes that resolve it; ten-point interpolation between them.</summary>
internal sealed class SampledFunction
{
    /// <summary>Nodes that an interpolated value needs.</summary>
    internal const int Nodes = 10;

    private const double Golden = 0.6180339887498949;
    private readonly double[] _values;

    internal SampledFunction(double start, double step, double[] values) => (Start, Step, _values) = (start, step, values);

    internal double Start { get; }

    internal double Step { get; }

    internal double[] Values => _values;

    /// <summary>The same function plus the log of a normal density.</summary>
    internal SampledFunction PlusNormal(double mean, double sd)
    {
        var values = new double[_values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var z = (Start + i * Step - mean) / sd;
            values[i] = _values[i] - 0.5 * z * z;
        }

        return new(Start, Step, values);
    }

    /// <summary>
    /// Interpolated value; barycentric Lagrange form (Berrut and Trefethen 2004, SIAM Review 46, 501-517). Beyond the outermost nodes it is the value there: a polynomial would
    /// run away.
    /// </summary>
    internal double At(double t)
    {
        var u = Math.Clamp((t - Start) / Step, 0, _values.Length - 1);
        var first = Math.Clamp((int)Math.Floor(u) - Nodes / 2 + 1, 0, _values.Length - Nodes);
        u -= first;
        ReadOnlySpan<double> weights = [1, -9, 36, -84, 126, -126, 84, -36, 9, -1]; // (-1)^k C(9, k)
        var (top, bottom) = (0.0, 0.0);
        for (var k = 0; k < Nodes; k++)
        {
            var distance = u - k;
            if (Math.Abs(distance) < 1e-9)
                return _values[first + k];
            var weight = weights[k] / distance;
            top += weight * _values[first + k];
            bottom += weight;
        }

        return top / bottom;
    }

    /// <summary>The interval outside which the function is more than <paramref name="cut"/> below its peak; a little wider, never narrower.</summary>
    internal (double Start, double End) Support(double cut)
    {
        var best = 0;
        for (var i = 1; i < _values.Length; i++)
            if (_values[i] > _values[best])
                best = i;
        var (peakAt, peak) = Peak(Start + (best - 1) * Step, Start + (best + 1) * Step);
        var level = peak - cut;
        var (first, last) = (0, _values.Length - 1);
        while (first < best && _values[first] < level)
            first++;
        while (last > best && _values[last] < level)
            last--;
        var start = _values[first] < level ? Edge(level, peakAt, -Step) : Edge(level, Math.Min(peakAt, Start + first * Step), -Step);
        var end = _values[last] < level ? Edge(level, peakAt, Step) : Edge(level, Math.Max(peakAt, Start + last * Step), Step);
        return (start, end);
    }

    private (double At, double Value) Peak(double low, double high)
    {
        (low, high) = (Math.Max(low, Start), Math.Min(high, Start + (_values.Length - 1) * Step));
        var (a, b) = (high - Golden * (high - low), low + Golden * (high - low));
        var (atA, atB) = (At(a), At(b));
        for (var i = 0; i < 32; i++)
        {
            if (atA > atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - Golden * (high - low);
                atA = At(a);
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + Golden * (high - low);
                atB = At(b);
            }
        }

        return atA > atB ? (a, atA) : (b, atB);
    }

    /// <summary>From an inner point one step outward at most, then the stride is halved until the edge is known to 1/4096 of a step.</summary>
    private double Edge(double level, double inner, double stride)
    {
        var outer = Math.Clamp(inner + stride, Start, Start + (_values.Length - 1) * Step);
        if (At(outer) > level)
            return outer;
        for (var i = 0; i < 12; i++)
        {
            var middle = (inner + outer) / 2;
            if (At(middle) > level)
                inner = middle;
            else
                outer = middle;
        }

        return outer;
    }
}
