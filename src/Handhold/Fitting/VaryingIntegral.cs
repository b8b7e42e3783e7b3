using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>The likelihood of a block of levels, all their numbers integrated out, at given parameters.</summary>
/// <remarks>
/// The finest levels by quadrature, inside Laplace's method for those above and the days: at a point u near the top, with gradient g and curvature C of the log integrand h, the integral
/// is exp(h(u) + ½ gᵀ C⁻¹ g) / √det C. Where what stands above moves the frames in up to four directions, quadrature about that top says how far the method is off. Sources: Rue, Martino and Chopin (2009), Journal of the Royal Statistical Society B 71, 319-392, for nesting; Tierney and Kadane (1986).
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
    private const double Close = 1e-3;
    private const double Farthest = 4;
    private const double LeastCurvature = 0.25;
    private const double MostAbove = 1; // where no top was found the parabola says nothing of the height above

    private LevelLoading Finest => loadings[frames.Finest];

    /// <summary>The integral over a block.</summary>
    /// <param name="block">The block.</param>
    /// <param name="start">Where to start; that of other parameters will do.</param>
    /// <param name="rule">The nodes; on the way to the top they are few.</param>
    internal BlockTop Of(LevelBlock block, BlockTop start, IntegralRule rule)
    {
        if (start.Z.Length == 0)
        {
            var integral = Integral(block.Finest[0], [], []);
            var top = integral.Top(start.Levels[0]);
            return new([], [], [top], integral.Log(top, rule.Finest, [], []));
        }

        BlockSlopes at = new(this, frames, offsets, loadings, block, start);
        Climb(at);
        var byNodes = rule.Above is { } above ? ByNodes(at, above) : 0;
        var log = at.Evaluate(rule.Finest, LevelIntegral.Close) + byNodes;
        Factor(at.Curvature, at.Z.Length);
        Cholesky.Forward(at.Curvature, at.Gradient);
        log += 0.5 * Math.Min(MostAbove, Square(at.Gradient)) - LogRoot(at.Curvature, at.Z.Length);
        Cholesky.Back(at.Curvature, at.Gradient);
        at.Move(1);
        return new(at.Z, at.Curvature, at.Levels, log);
    }

    /// <summary>One of the finest levels, below upper levels with these numbers.</summary>
    /// <param name="level">The level.</param>
    /// <param name="z">The numbers.</param>
    /// <param name="above">Room for two numbers a part.</param>
    internal LevelIntegral Integral(int level, ReadOnlySpan<double> z, Span<double> above)
    {
        var parts = frames.Levels[level];
        if (above.IsEmpty)
            above = new double[2 * parts.Length];
        above = above[..(2 * parts.Length)];
        above.Clear();
        for (var p = 0; p < parts.Length; p++)
        {
            var turn = 0.0;
            for (var i = 0; i < parts[p].Above.Length; i++)
            {
                var place = parts[p].Above[i];
                var loading = loadings[frames.Upper[place].Grouping];
                var numbers = z[offsets[place]..];
                turn += parts[p].Weights[i].Turning * loading.Shift(numbers);
                above[2 * p] += parts[p].Weights[i].Shifting * loading.Shift(numbers);
                above[2 * p + 1] += loading.Steepening(numbers);
            }

            if (parts[p].Motion is { } motion)
                above[2 * p] += curves.Turned(motion, turn);
        }

        return new(curves, parts, above, Finest);
    }

    /// <summary>Of all that blurs the frames of a part, the share of the rotation, below upper levels with these numbers.</summary>
    internal double RotationShare(LevelPart part, ReadOnlySpan<double> z)
    {
        var turn = 0.0;
        for (var i = 0; i < part.Above.Length; i++)
            turn += part.Weights[i].Turning * loadings[frames.Upper[part.Above[i]].Grouping].Shift(z[offsets[part.Above[i]]..]);
        return part.Motion is null ? 0 : curves.RotationShare(part.Motion, turn);
    }

    /// <summary>To where the next step would hardly matter.</summary>
    private static void Climb(BlockSlopes at)
    {
        var before = double.NegativeInfinity;
        for (var step = 0; ; step++)
        {
            var value = at.Evaluate(IntegralRule.Few.Finest, LevelIntegral.Near);
            for (var by = 0.5; value < before - 0.01 && by > 1e-3; by /= 2)
            {
                at.Return(by);
                value = at.Evaluate(IntegralRule.Few.Finest, LevelIntegral.Near);
            }

            Factor(at.Curvature, at.Z.Length);
            Cholesky.Forward(at.Curvature, at.Gradient);
            var square = Square(at.Gradient);
            Cholesky.Back(at.Curvature, at.Gradient);
            if (step == Steps)
                return;
            at.Move(Math.Min(1, Farthest / Math.Sqrt(square)));
            if (square < Close)
                return;
            before = value;
        }
    }

    /// <summary>What quadrature, few nodes below, adds to the logarithm of the integral by Laplace's method, where there are nodes.</summary>
    private static double ByNodes(BlockSlopes at, UpperNodes above)
    {
        var directions = at.Directions(UpperNodes.Most);
        if (directions.IsEmpty && above.IsCheck)
            directions = [.. Enumerable.Range(0, at.Z.Length).Select(at.Unit)];
        if (directions.IsEmpty)
            return 0;
        var size = directions.Length;
        var laplace = at.Evaluate(IntegralRule.Few.Finest, LevelIntegral.Close);
        var (gradient, curvature) = at.Along(directions);
        Factor(curvature, size);
        Cholesky.Forward(curvature, gradient);
        laplace += 0.5 * Math.Min(MostAbove, Square(gradient));
        Cholesky.Back(curvature, gradient);
        var moves = above.IsCheck ? null : at.Moves();
        var (heights, u, z) = (new List<double>(), new double[size], new double[at.Z.Length]);
        foreach (var (node, logWeight) in above[size])
        {
            node.CopyTo(u, 0);
            Cholesky.Back(curvature, u);
            at.Z.CopyTo(z, 0);
            for (var i = 0; i < size; i++)
            for (var a = 0; a < z.Length; a++)
                z[a] += directions[i][a] * (u[i] + gradient[i]);
            heights.Add(logWeight + at.Height(z, IntegralRule.Few.Finest, moves));
        }

        return Elementary.LogSum(CollectionsMarshal.AsSpan(heights)) - laplace;
    }

    /// <summary>Cholesky factor of the curvature, its diagonal raised where it is not positive definite.</summary>
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

    private static double Square(double[] x) => x.Sum(v => v * v);

    private static double LogRoot(double[] factor, int size) => Enumerable.Range(0, size).Sum(i => Math.Log(factor[i * size + i]));
}
