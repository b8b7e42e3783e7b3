using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>The posterior of one curve in which levels vary, as weighted points.</summary>
/// <param name="Posterior">The points and their levels.</param>
/// <param name="Density">What was sampled, searching from its top.</param>
/// <param name="Top">Coordinates of that top.</param>
/// <param name="LogEvidence">Log of the integral, Bernoulli scale.</param>
/// <param name="LogLikelihood">At the top of the density of the parameters, levels integrated out.</param>
/// <param name="Sampling">How well the points stand for it.</param>
internal sealed record VaryingSample(
    VaryingPosterior Posterior,
    VaryingDensity Density,
    ImmutableArray<double> Top,
    double LogEvidence,
    double LogLikelihood,
    Sampling Sampling
)
{
    private const double LogTwoPi = 1.8378770664093454836;
    private const double Negligible = 1e-9;
    private const int Checked = 128;
    private const int Trials = 6;
    private const int MostTogether = 200;
    private const int Beside = 2; // draws of the levels beside a point: they scatter more than points do
    internal const double Step = 0.02; // integrals stop at tops that are good to less

    /// <summary>Samples a curve's posterior.</summary>
    /// <param name="model">The model.</param>
    /// <param name="rows">The curve's frames.</param>
    /// <param name="size">Points.</param>
    /// <param name="rough">By few nodes and Laplace's method alone, which is a fifth of the work: good enough to compare priors by.</param>
    /// <param name="progress">Told the share of the points done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static VaryingSample Of(
        KeeperModel model,
        CurveRows rows,
        int size,
        bool rough,
        Action<double>? progress,
        CancellationToken cancellation
    )
    {
        var place = $"Curve {rows.Key}";
        var moved = rows.Moved(model);
        var spreads = LevelSpread.Of(model, moved, rows.Data.Cells, place);
        var frames = VaryingFrames.Of(moved, spreads, rows.Data, model.Luck);
        if (frames.Blocks.Max(b => b.Upper.Length) is > MostTogether and var together)
            throw new CellException(
                place,
                FormattableString.Invariant(
                    $"{together} labels and days of it hang together through what they share, and at most {MostTogether} are fitted so."
                ),
                "Say which labels lie within which (--within), or use the likelihood, which takes any number."
            );
        VaryingDensity density = new(model, moved, spreads, frames);
        var start = Peak.Start(density.Rough, density.Dimension, apart: 0.5);
        density = density.From(start);
        cancellation.ThrowIfCancellationRequested();
        var peak = Peak.Of(density.Rough, start, Step);
        density = density.From(peak.Top);
        var seed = Seed.From(model.Seed);
        var sample = WeightedSample.Of(
            Told(rough ? density.Rough : density.Log, size, progress),
            density.Rough,
            peak,
            Trials,
            size,
            seed.Stream(0).Bits,
            cancellation
        );
        var points = Enumerable
            .Range(0, sample.Count)
            .Where(k => sample.Weights[k] > Negligible)
            .Select(k => (Index: k, Point: density.Read(sample.Point(k))))
            .ToImmutableArray();
        LevelSampler sampler = new(density, points, Beside, size, seed);
        double[][] some = [.. points.Take(Checked).Select(p => sample.Point(p.Index).ToArray())];
        return new(
            new(
                moved,
                [.. points.SelectMany(p => Enumerable.Repeat(Draw(moved, sample.Weights[p.Index] / Beside, p.Point), Beside))],
                spreads,
                sampler.Of,
                Beside,
                new(Beside * some.Length, () => MoreNodes(density, some))
            ),
            density,
            [.. peak.Top],
            sample.LogIntegral - 0.5 * density.Dimension * LogTwoPi,
            density.LogLikelihood(density.Read(peak.Top), IntegralRule.Usual),
            new(sample.Count, sample.EffectiveSize, sample.Tail)
        );
    }

    private static LogDensity Told(LogDensity density, int size, Action<double>? progress)
    {
        var (done, telling) = (0, new Lock());
        return progress is null
            ? density
            : z =>
            {
                var log = density(z);
                lock (telling)
                    progress(++done / (double)size);
                return log;
            };
    }

    private static VaryingDraw Draw(WhatMoved moved, double weight, VaryingPoint point)
    {
        var effects = (double[])point.Effects.Clone();
        moved.Balance(effects);
        var typical = point.Typical;
        return new(
            new(
                weight,
                typical.Tau0,
                typical.LogSteepness,
                typical.Ceiling,
                typical.Floor,
                typical.SessionSd,
                typical.BurstSd,
                [],
                [.. effects]
            ),
            point.Loadings
        );
    }

    /// <summary>Change of the log density from more nodes, block by block, beside each draw.</summary>
    private static double[][] MoreNodes(VaryingDensity density, double[][] points)
    {
        var changes = new double[Beside * points.Length][];
        Parallel.For(
            0,
            points.Length,
            k =>
            {
                var point = density.Read(points[k]);
                double[] change =
                [
                    .. density
                        .Blocks(point, IntegralRule.More)
                        .Zip(density.Blocks(point, IntegralRule.Usual), (more, usual) => more - usual),
                ];
                Array.Fill(changes, change, Beside * k, Beside);
            }
        );
        return changes;
    }
}
