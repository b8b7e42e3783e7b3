using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.Intrinsics;
using Handhold.Curves;

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
    private const int Stacked = 64;
    private const int Steps = 40;

    /// <summary>A step, in squared standard deviates, after which a top is found.</summary>
    internal const double Close = 1e-8;

    /// <summary>The same on the way to another top.</summary>
    internal const double Near = 1e-3;

    private const double Farthest = 3;
    private const double LeastCurvature = 0.25;
    private readonly ReadOnlySpan<double> _above = above;

    private static Vector512<double> Halves { get; } = Vector512.Create(1, 0.5, 0.25, 0.125, 1 / 16.0, 1 / 32.0, 1 / 64.0, 1 / 128.0);

    /// <summary>The top, by Newton's steps; of each the largest of eight lengths that does not lead down.</summary>
    /// <param name="start">Where to start.</param>
    /// <param name="close">The step, in squared standard deviates, after which to stop.</param>
    internal LevelTop Top(LevelTop start, double close = Close)
    {
        var (z0, z1, d0, d1, before) = (start.Z0, start.Z1, 0.0, 0.0, double.NegativeInfinity);
        for (var step = 0; ; step++)
        {
            var (to0, to1) = (Vector512.Create(z0) + Halves * d0, Vector512.Create(z1) + Halves * d1);
            var at = Sum(to0, to1);
            var heights = at.Value - (to0 * to0 + to1 * to1) * 0.5;
            var rising = Vector512.GreaterThanOrEqual(heights, Vector512.Create(before - 1e-9)).ExtractMostSignificantBits();
            var lane = Math.Min(BitOperations.TrailingZeroCount(rising), Vector512<double>.Count - 1);
            (z0, z1, before) = (to0[lane], to1[lane], heights[lane]);

            var top = Curvature(z0, z1, at, lane);
            var (y0, y1) = Uphill(top, at.T[lane], at.L[lane], z0, z1);
            var square = y0 * y0 + y1 * y1;
            var by = Math.Min(1, Farthest / Math.Sqrt(square));
            (d0, d1) = top.Step(by * y0, by * y1);
            if (!(square > close))
                return top with { Z0 = z0 + d0, Z1 = z1 + d1 };
            if (step == Steps)
                return top;
        }
    }

    /// <summary>How the top follows from above.</summary>
    internal TopMoves Moves(LevelTop top)
    {
        var by = new (double, double)[2 * parts.Length];
        for (var p = 0; p < parts.Length; p++)
        {
            LevelSlopes at = default;
            Add(p, Vector512.Create(top.Z0), Vector512.Create(top.Z1), ref at);
            (by[2 * p], by[2 * p + 1]) = (Move(top, at.TT[0], at.TL[0]), Move(top, at.TL[0], at.LL[0]));
        }

        return new(_above.ToArray(), by);
    }

    /// <summary>Log of the integral, with its derivatives where room for them is given.</summary>
    /// <param name="top">The integrand's top.</param>
    /// <param name="nodes">Nodes in each dimension.</param>
    /// <param name="gradient">By shift and steepening of every part; empty where not wanted.</param>
    /// <param name="curvature">Second derivatives, row-major.</param>
    internal double Log(LevelTop top, LevelNodes nodes, Span<double> gradient, Span<double> curvature)
    {
        var lanes = loading.Dimension == 1 ? nodes.One : nodes.Two;
        Span<Vector512<double>> shares = stackalloc Vector512<double>[lanes.Length];
        var kept = gradient.IsEmpty ? 0 : lanes.Length * parts.Length;
        var slopes = kept <= Stacked ? stackalloc LevelSlopes[kept] : new LevelSlopes[kept];
        var highest = Vector512.Create(double.NegativeInfinity);
        for (var k = 0; k < lanes.Length; k++)
        {
            var (z0, z1) = top.At(lanes[k].X0, lanes[k].X1);
            var log = lanes[k].LogWeight - (z0 * z0 + z1 * z1) * 0.5;
            for (var p = 0; p < parts.Length; p++)
            {
                if (slopes.IsEmpty)
                {
                    log += curves.Log(parts[p], Shift(p, z0), Steepening(p, z0, z1));
                    continue;
                }

                ref var part = ref slopes[k * parts.Length + p];
                part = default;
                Add(p, z0, z1, ref part);
                log += part.Value;
            }

            shares[k] = log;
            highest = Vector512.Max(highest, log);
        }

        var (most, total) = (Highest(highest), Vector512<double>.Zero);
        foreach (ref var share in shares)
        {
            share = Vector512.Exp(share - Vector512.Create(most));
            total += share;
        }

        var sum = Vector512.Sum(total);
        if (gradient.Length > 0)
            Derive(shares, slopes, sum, gradient, curvature);
        return top.LogScale(loading.Dimension) + most + Math.Log(sum);
    }

    /// <summary>Log-likelihood of the frames and log density of the numbers but for its constant.</summary>
    internal double LogDensity(double z0, double z1)
    {
        var log = -0.5 * (z0 * z0 + z1 * z1);
        for (var p = 0; p < parts.Length; p++)
            log += curves
                .Log(parts[p], Shift(p, Vector512.Create(z0)), Steepening(p, Vector512.Create(z0), Vector512.Create(z1)))
                .ToScalar();
        return log;
    }

    private static double Highest(Vector512<double> lanes)
    {
        var highest = double.NegativeInfinity;
        for (var i = 0; i < Vector512<double>.Count; i++)
            highest = Math.Max(highest, lanes[i]);
        return highest;
    }

    private static void Derive(
        ReadOnlySpan<Vector512<double>> shares,
        ReadOnlySpan<LevelSlopes> slopes,
        double total,
        Span<double> gradient,
        Span<double> curvature
    )
    {
        var (parts, width) = (slopes.Length / shares.Length, gradient.Length);
        curvature.Clear();
        for (var p = 0; p < parts; p++)
        {
            LevelSlopes mean = default;
            for (var k = 0; k < shares.Length; k++)
            {
                ref readonly var slope = ref slopes[k * parts + p];
                var share = shares[k] / total;
                mean.T += share * slope.T;
                mean.L += share * slope.L;
                mean.TT += share * slope.TT;
                mean.TL += share * slope.TL;
                mean.LL += share * slope.LL;
            }

            (gradient[2 * p], gradient[2 * p + 1]) = (Vector512.Sum(mean.T), Vector512.Sum(mean.L));
            var at = 2 * p * (width + 1);
            (curvature[at], curvature[at + width + 1]) = (Vector512.Sum(mean.TT), Vector512.Sum(mean.LL));
            curvature[at + 1] = curvature[at + width] = Vector512.Sum(mean.TL);
        }

        for (var p = 0; p < parts; p++)
        for (var q = 0; q <= p; q++)
        {
            var (tt, tl, lt, ll) = (Vector512<double>.Zero, Vector512<double>.Zero, Vector512<double>.Zero, Vector512<double>.Zero);
            for (var k = 0; k < shares.Length; k++)
            {
                ref readonly var a = ref slopes[k * parts + p];
                ref readonly var b = ref slopes[k * parts + q];
                var (t, l) = (shares[k] / total * a.T, shares[k] / total * a.L);
                (tt, tl, lt, ll) = (tt + t * b.T, tl + t * b.L, lt + l * b.T, ll + l * b.L);
            }

            Add(2 * p, 2 * q, tt, gradient, curvature);
            Add(2 * p, 2 * q + 1, tl, gradient, curvature);
            Add(2 * p + 1, 2 * q, lt, gradient, curvature);
            Add(2 * p + 1, 2 * q + 1, ll, gradient, curvature);
        }

        static void Add(int a, int b, Vector512<double> products, ReadOnlySpan<double> gradient, Span<double> curvature)
        {
            var covariance = Vector512.Sum(products) - gradient[a] * gradient[b];
            curvature[a * gradient.Length + b] += covariance;
            if (a / 2 != b / 2)
                curvature[b * gradient.Length + a] += covariance;
        }
    }

    private (double D0, double D1) Move(LevelTop top, double shift, double steepening)
    {
        var (y0, y1) = Uphill(top, shift, steepening, 0, 0);
        return top.Step(y0, y1);
    }

    /// <summary>The way up, in standard deviates, where the log-likelihood has these slopes in shift and steepening and the numbers are these.</summary>
    private (double Y0, double Y1) Uphill(LevelTop top, double shift, double steepening, double z0, double z1)
    {
        var y0 = (loading.Tau * shift + loading.Steep0 * steepening - z0) / top.L00;
        return (y0, loading.Dimension == 1 ? 0 : (loading.Steep1 * steepening - z1 - top.L10 * y0) / top.L11);
    }

    private LevelSlopes Sum(Vector512<double> z0, Vector512<double> z1)
    {
        LevelSlopes sum = default;
        for (var p = 0; p < parts.Length; p++)
            Add(p, z0, z1, ref sum);
        return sum;
    }

    private void Add(int part, Vector512<double> z0, Vector512<double> z1, ref LevelSlopes sum) =>
        curves.Add(parts[part], Shift(part, z0), Steepening(part, z0, z1), ref sum);

    private Vector512<double> Shift(int part, Vector512<double> z0) => z0 * loading.Tau + Vector512.Create(_above[2 * part]);

    private Vector512<double> Steepening(int part, Vector512<double> z0, Vector512<double> z1) =>
        z0 * loading.Steep0 + z1 * loading.Steep1 + Vector512.Create(_above[2 * part + 1]);

    /// <summary>The curvature at a point, never below a quarter of the prior's: the likelihood need not be concave.</summary>
    private LevelTop Curvature(double z0, double z1, in LevelSlopes at, int lane)
    {
        var (tau, s0, s1) = (loading.Tau, loading.Steep0, loading.Steep1);
        var (tt, tl, ll) = (at.TT[lane], at.TL[lane], at.LL[lane]);
        var l00 = Math.Sqrt(Math.Max(LeastCurvature, 1 - tau * tau * tt - 2 * tau * s0 * tl - s0 * s0 * ll));
        if (loading.Dimension == 1)
            return new(z0, 0, l00, 0, 1);
        var l10 = -(tau * s1 * tl + s0 * s1 * ll) / l00;
        return new(z0, z1, l00, l10, Math.Sqrt(Math.Max(LeastCurvature, 1 - s1 * s1 * ll - l10 * l10)));
    }
}
