using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>A smooth density of a half point (log2 seconds) on a uniform grid, with its distribution function.</summary>
/// <remarks>Mean and mass by the trapezoid rule; the distribution function by a six-point rule of order seven inside and cubic Hermite interpolation between nodes.</remarks>
internal sealed class HalfPointDensity : HalfPoint
{
    private readonly double[] _density; // sums to 1 / Step
    private readonly double[] _cumulative;

    /// <summary>Takes values proportional to the density; zero outside.</summary>
    internal HalfPointDensity(double start, double step, ReadOnlySpan<double> values)
    {
        (Start, Step) = (start, step);
        _density = new double[values.Length];
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        for (var i = 0; i < values.Length; i++)
            _density[i] = values[i] / (sum * step);
        _cumulative = Accumulate(_density, step);
    }

    internal double Start { get; }

    internal double Step { get; }

    internal override double Low => Start;

    internal override double High => Position(_density.Length - 1);

    internal ReadOnlySpan<double> Density => _density;

    internal double Position(int index) => Start + index * Step;

    internal override double Cdf(double t)
    {
        var u = (t - Start) / Step;
        if (!(u > 0))
            return 0;
        var i = (int)Math.Min(u, int.MaxValue);
        if (i >= _density.Length - 1)
            return 1;
        u -= i;
        var (c0, c1) = (_cumulative[i], _cumulative[i + 1]);
        var (d0, d1) = (_density[i] * Step, _density[i + 1] * Step);
        var rise = c1 - c0;
        var value = c0 + u * (d0 + u * (3 * rise - 2 * d0 - d1 + u * (d0 + d1 - 2 * rise)));
        return Math.Clamp(value, 0, 1);
    }

    /// <summary>A half point that has one of several densities by chance, on the grid of the finest.</summary>
    internal static HalfPoint Mixed(IReadOnlyCollection<(double Weight, HalfPointDensity Density)> parts)
    {
        var (start, end) = (parts.Min(p => p.Density.Start), parts.Max(p => p.Density.Position(p.Density._density.Length - 1)));
        var step = parts.Min(p => p.Density.Step);
        var values = new double[(int)Math.Ceiling((end - start) / step) + 1];
        foreach (var (weight, density) in parts)
        {
            var smooth = density.Smooth();
            for (var i = 0; i < values.Length; i++)
                values[i] += weight * Math.Max(0, smooth.At(start + i * step));
        }

        return new HalfPointDensity(start, step, values);
    }

    internal override HalfPoint Shifted(double sd)
    {
        if (sd == 0)
            return this;
        var weights = LuckKernel.Weights(sd, Step);
        var radius = weights.Length / 2;
        var values = new double[_density.Length + 2 * radius];
        for (var j = 0; j < values.Length; j++)
            values[j] = Math.Max(0, LuckKernel.SmoothAt(_density, weights, j - radius));
        return new HalfPointDensity(Start - radius * Step, Step, values);
    }

    internal override (double Start, double Step, ReadOnlyMemory<double> Masses) Nodes(double coarsest)
    {
        var fine = Refined((int)Math.Ceiling(Math.Min(Step / coarsest, 1e6)));
        return (fine.Start, fine.Step, Array.ConvertAll(fine._density, d => d * fine.Step));
    }

    /// <summary>The same density on a grid <paramref name="times"/> as fine.</summary>
    private HalfPointDensity Refined(int times)
    {
        if (times <= 1)
            return this;
        var (smooth, values) = (Smooth(), new double[(_density.Length - 1) * times + 1]);
        for (var i = 0; i < values.Length; i++)
            values[i] = Math.Max(0, smooth.At(Start + i * Step / times));
        return new(Start, Step / times, values);
    }

    /// <summary>The density between its nodes, and falling to zero beyond them.</summary>
    private SampledFunction Smooth()
    {
        var values = new double[_density.Length + 2 * SampledFunction.Nodes];
        _density.CopyTo(values, SampledFunction.Nodes);
        return new(Start - SampledFunction.Nodes * Step, Step, values);
    }

    private static double At(double[] values, int index) => (uint)index < (uint)values.Length ? values[index] : 0;

    private static double[] Accumulate(double[] density, double step)
    {
        var cumulative = new double[density.Length];
        for (var i = 0; i + 1 < density.Length; i++)
        {
            var part =
                802 * (density[i] + density[i + 1])
                - 93 * (At(density, i - 1) + At(density, i + 2))
                + 11 * (At(density, i - 2) + At(density, i + 3));
            cumulative[i + 1] = cumulative[i] + Math.Max(0, part * step / 1440);
        }

        var total = cumulative[^1];
        if (total > 0)
            for (var i = 0; i < cumulative.Length; i++)
                cumulative[i] /= total;
        return cumulative;
    }
}
