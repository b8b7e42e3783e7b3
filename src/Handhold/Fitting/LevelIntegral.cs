using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>The likelihood of one level's frames, its own standard normal numbers integrated out.</summary>
/// <remarks>
/// Adaptive Gauss-Hermite quadrature about the integrand's top, in each dimension: Naylor and Smith (1982), Applied Statistics 31, 214-225. Derivatives in what is shifted from above are those of the integral: the mean of
/// the integrand's, and their covariance (Louis 1982).
/// </remarks>
/// <param name="curves">The curves.</param>
/// <param name="parts">The level's frames.</param>
/// <param name="above">Of each part its shift, then its steepening, by the levels above.</param>
/// <param name="loading">What the level's numbers do.</param>
internal readonly ref struct LevelIntegral(
    LevelCurves curves,
    ImmutableArray<LevelPart> parts,
    ReadOnlySpan<double> above,
    LevelLoading loading
)
{
    private const int Stacked = 512;
    private const int Steps = 40;
    private const double Close = 1e-10;
    private const double Farthest = 3;
    private const double LeastCurvature = 0.25;
    private readonly ReadOnlySpan<double> _above = above;

    internal LevelTop Top(LevelTop start)
    {
        var (z0, z1) = (start.Z0, start.Z1);
        var at = Sum(z0, z1);
        for (var step = 0; ; step++)
        {
            var top = Curvature(z0, z1, at);
            var (g0, g1) = (loading.Tau * at.T + loading.Steep0 * at.L - z0, loading.Steep1 * at.L - z1);
            if (loading.Dimension == 1)
                g1 = 0;
            // Forward and back through L.
            var y0 = g0 / top.L00;
            var y1 = (g1 - top.L10 * y0) / top.L11;
            var square = y0 * y0 + y1 * y1;
            if (step == Steps || !(square > Close))
                return top;
            var by = Math.Min(1, Farthest / Math.Sqrt(square));
            var value = at.Value - 0.5 * (z0 * z0 + z1 * z1);
            while (true)
            {
                var (next0, next1) = top.At(by * y0, by * y1);
                at = Sum(next0, next1);
                if (at.Value - 0.5 * (next0 * next0 + next1 * next1) >= value - 1e-9 || by < 1e-6)
                {
                    (z0, z1) = (next0, next1);
                    break;
                }

                by /= 2;
            }
        }
    }

    /// <summary>Log of the integral, with its derivatives where room for them is given.</summary>
    /// <param name="top">The integrand's top.</param>
    /// <param name="nodes">Nodes in each dimension.</param>
    /// <param name="gradient">By shift and steepening of every part; empty where not wanted.</param>
    /// <param name="curvature">Second derivatives, row-major.</param>
    internal double Log(LevelTop top, HermiteNodes nodes, Span<double> gradient, Span<double> curvature)
    {
        var (dimension, count) = (loading.Dimension, nodes.Count);
        var all = dimension == 1 ? count : count * count;
        var width = gradient.Length;
        Span<double> logs = stackalloc double[all];
        var kept = gradient.IsEmpty ? 0 : all * parts.Length;
        var slopes = kept <= Stacked ? stackalloc LevelSlopes[kept] : new LevelSlopes[kept];
        var highest = double.NegativeInfinity;
        for (var k = 0; k < all; k++)
        {
            var (i, j) = (k % count, k / count);
            var (z0, z1) = top.At(nodes.At[i], dimension == 1 ? 0 : nodes.At[j]);
            var log = nodes.LogWeight[i] + (dimension == 1 ? 0 : nodes.LogWeight[j]) - 0.5 * (z0 * z0 + z1 * z1);
            for (var p = 0; p < parts.Length; p++)
            {
                var part = Part(p, z0, z1);
                log += part.Value;
                if (slopes.Length > 0)
                    slopes[k * parts.Length + p] = part;
            }

            logs[k] = log;
            highest = Math.Max(highest, log);
        }

        var total = 0.0;
        foreach (var log in logs)
            total += Math.Exp(log - highest);
        if (width > 0)
            Derive(logs, slopes, highest + Math.Log(total), gradient, curvature);
        return top.LogScale(dimension) + highest + Math.Log(total);
    }

    /// <summary>Log-likelihood of the frames and log density of the numbers but for its constant.</summary>
    internal double LogDensity(double z0, double z1) => Sum(z0, z1).Value - 0.5 * (z0 * z0 + z1 * z1);

    private static void Derive(
        ReadOnlySpan<double> logs,
        ReadOnlySpan<LevelSlopes> slopes,
        double log,
        Span<double> gradient,
        Span<double> curvature
    )
    {
        var (parts, width) = (slopes.Length / logs.Length, gradient.Length);
        gradient.Clear();
        curvature.Clear();
        Span<double> node = stackalloc double[width];
        for (var k = 0; k < logs.Length; k++)
        {
            var share = Math.Exp(logs[k] - log);
            if (share == 0)
                continue;
            for (var p = 0; p < parts; p++)
            {
                ref readonly var slope = ref slopes[k * parts + p];
                (node[2 * p], node[2 * p + 1]) = (slope.T, slope.L);
                var at = 2 * p * (width + 1);
                curvature[at] += share * slope.TT;
                curvature[at + 1] += share * slope.TL;
                curvature[at + width] += share * slope.TL;
                curvature[at + width + 1] += share * slope.LL;
            }

            for (var a = 0; a < width; a++)
            {
                gradient[a] += share * node[a];
                for (var b = 0; b < width; b++)
                    curvature[a * width + b] += share * node[a] * node[b];
            }
        }

        for (var a = 0; a < width; a++)
        for (var b = 0; b < width; b++)
            curvature[a * width + b] -= gradient[a] * gradient[b];
    }

    private LevelSlopes Part(int part, double z0, double z1) =>
        curves.Of(parts[part], _above[2 * part] + loading.Tau * z0, _above[2 * part + 1] + loading.Steep0 * z0 + loading.Steep1 * z1);

    private LevelSlopes Sum(double z0, double z1)
    {
        LevelSlopes sum = default;
        for (var p = 0; p < parts.Length; p++)
            sum.Add(Part(p, z0, z1));
        return sum;
    }

    /// <summary>The curvature at a point, never below a quarter of the prior's: the likelihood need not be concave.</summary>
    private LevelTop Curvature(double z0, double z1, in LevelSlopes at)
    {
        var (tau, s0, s1) = (loading.Tau, loading.Steep0, loading.Steep1);
        var l00 = Math.Sqrt(Math.Max(LeastCurvature, 1 - tau * tau * at.TT - 2 * tau * s0 * at.TL - s0 * s0 * at.LL));
        if (loading.Dimension == 1)
            return new(z0, 0, l00, 0, 1);
        var l10 = -(tau * s1 * at.TL + s0 * s1 * at.LL) / l00;
        return new(z0, z1, l00, l10, Math.Sqrt(Math.Max(LeastCurvature, 1 - s1 * s1 * at.LL - l10 * l10)));
    }
}
