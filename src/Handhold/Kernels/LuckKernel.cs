using System.Numerics;
using System.Runtime.InteropServices;

namespace Handhold.Kernels;

/// <summary>Averaging a function that is known on a uniform grid over a normal shift of its argument.</summary>
/// <remarks>
/// (K f)(t) = E f(t + sd Z), Z standard normal. For sd of at least 0.8 steps the weights are the sampled normal density: the trapezoid rule, whose error for smooth
/// functions falls like exp(-2 π² sd²/step²) (Trefethen and Weideman 2014, SIAM Review 56, 385-458). Below that, five weights match the normal moments up to the fifth.
/// </remarks>
internal static class LuckKernel
{
    /// <summary>Sds to either side that the weights span.</summary>
    internal const double Reach = 5;

    private const double SampledFrom = 0.8;

    /// <summary>Steps to either side that the weights of <see cref="Weights"/> span.</summary>
    internal static int Radius(double sd, double step) =>
        sd == 0 ? 0
        : sd < SampledFrom * step ? 2
        : (int)Math.Ceiling(Reach * sd / step);

    /// <summary>2 x radius + 1 symmetric weights that sum to one.</summary>
    internal static double[] Weights(double sd, double step)
    {
        var radius = Radius(sd, step);
        if (radius == 0)
            return [1];
        if (sd < SampledFrom * step)
        {
            var v = sd * sd / (step * step);
            var far = (3 * v * v - v) / 24;
            var near = (v - 8 * far) / 2;
            return [far, near, 1 - 2 * (near + far), near, far];
        }

        var weights = new double[2 * radius + 1];
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
        {
            var z = (i - radius) * step / sd;
            sum += weights[i] = Math.Exp(-0.5 * z * z);
        }

        for (var i = 0; i < weights.Length; i++)
            weights[i] /= sum;
        return weights;
    }

    /// <summary>Where f is zero outside its span: the smoothed value at grid position <paramref name="position"/> (in steps from f[0], possibly outside).</summary>
    internal static double SmoothAt(ReadOnlySpan<double> f, ReadOnlySpan<double> weights, int position)
    {
        var shift = weights.Length / 2 - position; // weight index of f[0]
        var from = Math.Max(0, -shift);
        var to = Math.Min(f.Length, weights.Length - shift);
        return from >= to ? 0 : Dot(f[from..to], weights[(from + shift)..(to + shift)]);
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        ref var fromA = ref MemoryMarshal.GetReference(a);
        ref var fromB = ref MemoryMarshal.GetReference(b);
        var sums = Vector<double>.Zero;
        var i = 0;
        for (; i <= a.Length - Vector<double>.Count; i += Vector<double>.Count)
            sums += Vector.LoadUnsafe(ref fromA, (nuint)i) * Vector.LoadUnsafe(ref fromB, (nuint)i);
        var sum = Vector.Sum(sums);
        for (; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
