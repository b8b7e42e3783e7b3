using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>The likelihood of a block of levels, all their numbers integrated out, at given parameters.</summary>
/// <remarks>
/// The finest levels by quadrature, inside Laplace's method for those above and the days: at a point u near the top, with gradient g and curvature C of the log integrand h, the integral
/// is exp(h(u) + ½ gᵀ C⁻¹ g) / √det C. Source: Rue, Martino and Chopin (2009), Journal of the Royal Statistical Society B 71, 319-392, for nesting; Tierney and Kadane (1986).
/// </remarks>
/// <param name="curves">The curves.</param>
/// <param name="frames">The frames.</param>
/// <param name="offsets">Where the numbers of each upper level stand among those of its block.</param>
/// <param name="loadings">What the numbers of each grouping, and of days, do.</param>
internal sealed class VaryingIntegral(
    LevelCurves curves,
    VaryingFrames frames,
    ImmutableArray<int> offsets,
    ImmutableArray<LevelLoading> loadings
)
{
    private const int Steps = 30;
    private const double Close = 1e-5;
    private const double Farthest = 4;
    private const double LeastCurvature = 0.25;
    private const double MostAbove = 1; // where no top was found the parabola says nothing of the height above

    internal static HermiteNodes Few { get; } = HermiteNodes.Of(3);

    private LevelLoading Finest => loadings[frames.Finest];

    /// <summary>The integral over a block.</summary>
    /// <param name="block">The block.</param>
    /// <param name="start">Where to start; that of other parameters will do.</param>
    /// <param name="nodes">Nodes for the finest levels; on the way to the top they are few.</param>
    internal BlockTop Of(LevelBlock block, BlockTop start, HermiteNodes nodes)
    {
        var (z, levels) = ((double[])start.Z.Clone(), (LevelTop[])start.Levels.Clone());
        if (z.Length == 0)
        {
            var integral = Integral(block.Finest[0], z);
            levels[0] = integral.Top(levels[0]);
            return new(z, [], levels, integral.Log(levels[0], nodes, [], []));
        }

        var (gradient, curvature) = (new double[z.Length], new double[z.Length * z.Length]);
        var (before, last, by) = (double.NegativeInfinity, (double[])z.Clone(), 1.0);
        var move = new double[z.Length];
        for (var step = 0; ; step++)
        {
            var value = Evaluate(block, z, levels, Few, gradient, curvature);
            if (value < before - 0.01 && by > 1e-3)
            {
                by /= 2;
                for (var i = 0; i < z.Length; i++)
                    z[i] = last[i] + by * move[i];
                continue;
            }

            gradient.CopyTo(move, 0);
            Factor(curvature, z.Length);
            Cholesky.Forward(curvature, move);
            var square = move.Sum(m => m * m);
            Cholesky.Back(curvature, move);
            if (step >= Steps || square < Close)
                break;
            (before, by) = (value, Math.Min(1, Farthest / Math.Sqrt(square)));
            z.CopyTo(last, 0);
            for (var i = 0; i < z.Length; i++)
                z[i] += by * move[i];
        }

        var log = Evaluate(block, z, levels, nodes, gradient, curvature);
        Factor(curvature, z.Length);
        Cholesky.Forward(curvature, gradient);
        log += 0.5 * Math.Min(MostAbove, gradient.Sum(g => g * g));
        Cholesky.Back(curvature, gradient);
        for (var i = 0; i < z.Length; i++)
        {
            z[i] += gradient[i];
            log -= Math.Log(curvature[i * z.Length + i]);
        }

        return new(z, curvature, levels, log);
    }

    /// <summary>One of the finest levels, below upper levels with these numbers.</summary>
    internal LevelIntegral Integral(int level, ReadOnlySpan<double> z)
    {
        var parts = frames.Levels[level];
        var above = new double[2 * parts.Length];
        for (var p = 0; p < parts.Length; p++)
            foreach (var place in parts[p].Above)
            {
                var loading = loadings[frames.Upper[place].Grouping];
                var numbers = z[offsets[place]..];
                above[2 * p] += loading.Shift(numbers);
                above[2 * p + 1] += loading.Steepening(numbers);
            }

        return new(curves, parts, above, Finest);
    }

    /// <summary>Log integrand at the numbers of the upper levels, with gradient and negative second derivatives.</summary>
    private double Evaluate(LevelBlock block, double[] z, LevelTop[] levels, HermiteNodes nodes, double[] gradient, double[] curvature)
    {
        var log = 0.0;
        Array.Clear(curvature);
        for (var i = 0; i < z.Length; i++)
        {
            log -= 0.5 * z[i] * z[i];
            gradient[i] = -z[i];
            curvature[i * z.Length + i] = 1;
        }

        for (var k = 0; k < levels.Length; k++)
        {
            var width = 2 * frames.Levels[block.Finest[k]].Length;
            var (first, second) = (new double[width], new double[width * width]);
            var integral = Integral(block.Finest[k], z);
            levels[k] = integral.Top(levels[k]);
            log += integral.Log(levels[k], nodes, first, second);
            Spread(block.Finest[k], first, second, gradient, curvature);
        }

        return log;
    }

    /// <summary>From shifts and steepenings of a level's parts to the numbers of the levels above.</summary>
    private void Spread(int level, double[] first, double[] second, double[] gradient, double[] curvature)
    {
        var (parts, size) = (frames.Levels[level], gradient.Length);
        (int Part, double Tau, double Steep, int At)[] ways = [.. Ways(parts)];
        foreach (var (a, tauA, steepA, at) in ways)
        {
            gradient[at] += tauA * first[2 * a] + steepA * first[2 * a + 1];
            foreach (var (b, tauB, steepB, to) in ways)
            {
                var row = 2 * a * first.Length + 2 * b;
                curvature[at * size + to] -=
                    tauA * (tauB * second[row] + steepB * second[row + 1])
                    + steepA * (tauB * second[row + first.Length] + steepB * second[row + first.Length + 1]);
            }
        }
    }

    /// <summary>How each number above enters each part: by its shift, by its steepening.</summary>
    private IEnumerable<(int Part, double Tau, double Steep, int At)> Ways(ImmutableArray<LevelPart> parts)
    {
        for (var p = 0; p < parts.Length; p++)
            foreach (var place in parts[p].Above)
            {
                var loading = loadings[frames.Upper[place].Grouping];
                yield return (p, loading.Tau, loading.Steep0, offsets[place]);
                if (loading.Dimension == 2)
                    yield return (p, 0, loading.Steep1, offsets[place] + 1);
            }
    }

    /// <summary>Cholesky factor of a curvature, its diagonal raised where it is not positive definite.</summary>
    private static void Factor(double[] curvature, int size)
    {
        var original = (double[])curvature.Clone();
        for (var raise = LeastCurvature; !Cholesky.Factor(curvature, size, LeastCurvature) && double.IsFinite(raise); raise *= 4)
        {
            original.CopyTo(curvature, 0);
            for (var i = 0; i < size; i++)
                curvature[i * size + i] += raise;
        }
    }
}
