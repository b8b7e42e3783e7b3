using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>One curve's posterior with terms as weighted points.</summary>
/// <param name="Moved">Its terms.</param>
/// <param name="Draws">The points.</param>
/// <param name="Ceilings">Of each point, the coordinate of the ceiling; empty where it is not estimated.</param>
/// <param name="Sessions">Sessions.</param>
/// <param name="LogEvidence">Log of the integral, Bernoulli scale.</param>
/// <param name="Sampling">How well the points stand for the posterior.</param>
internal sealed record TermSample(
    WhatMoved Moved,
    ImmutableArray<TermDraw> Draws,
    ImmutableArray<double> Ceilings,
    int Sessions,
    double LogEvidence,
    Sampling Sampling
)
{
    private const int DaysSize = 8192;
    private const double LogTwoPi = 1.8378770664093454836;

    internal static TermSample Of(KeeperModel model, CurveRows rows, int size, CancellationToken cancellation)
    {
        var moved = WhatMoved.Of(model, rows.Data.Cells, $"Curve {rows.Key}");
        TermDensity density = new(model, moved, TermObservations.From(moved, rows.Data.Cells, model.Luck));
        var sample = WeightedSample.Of(
            density.Log,
            Peak.Start(density.Log, density.Dimension, apart: 0.125),
            size,
            Seed.From(model.Seed).Stream(0).Bits,
            cancellation
        );
        var draws = ImmutableArray.CreateBuilder<TermDraw>(sample.Count);
        var ceilings = ImmutableArray.CreateBuilder<double>();
        for (var k = 0; k < sample.Count; k++)
        {
            draws.Add(Draw(density, moved, sample, k));
            if (model.Ceiling.Value is null)
                ceilings.Add(sample.Point(k)[TermDensity.CeilingPlace]);
        }

        return new(
            moved,
            draws.MoveToImmutable(),
            ceilings.ToImmutable(),
            density.Sessions,
            sample.LogIntegral - 0.5 * density.Dimension * LogTwoPi,
            new(sample.Count, sample.EffectiveSize, sample.Tail)
        );
    }

    /// <summary>One point of a sample.</summary>
    internal static TermDraw Draw(TermDensity density, WhatMoved moved, WeightedSample sample, int k)
    {
        var effects = new double[moved.Effects.Length];
        var point = density.Read(sample.Point(k), effects);
        moved.Balance(effects);
        return new(
            sample.Weights[k],
            point.Tau0,
            point.LogSteepness,
            point.Ceiling,
            point.Floor,
            point.SessionSd,
            point.BurstSd,
            Days(density, sample.Point(k), point),
            [.. effects]
        );
    }

    /// <summary>The points of a curve without terms, for what is asked of its days together.</summary>
    internal static TermPosterior OfDays(KeeperModel model, CurveRows rows)
    {
        var moved = WhatMoved.Nothing(rows.HalfPoint);
        TermDensity density = new(model, moved, TermObservations.From(moved, rows.Data.Cells, model.Luck));
        var sample = WeightedSample.Of(
            density.Log,
            Peak.Start(density.Log, density.Dimension, apart: 0.125),
            DaysSize,
            Seed.From(model.Seed).Stream(0).Bits,
            default
        );
        return new(moved, [.. Enumerable.Range(0, sample.Count).Select(k => Draw(density, moved, sample, k))], density.Sessions)
        {
            Sampling = new(sample.Count, sample.EffectiveSize, sample.Tail),
        };
    }

    private static ImmutableArray<double> Days(TermDensity density, ReadOnlySpan<double> z, TermPoint point)
    {
        var days = new double[density.Sessions];
        for (var s = 0; s < days.Length; s++)
            days[s] = density.Session(z, point, s);
        return [.. days];
    }

    /// <summary>All at the middle of its prior but the half point, which is looked for.</summary>
    internal static double[] Start(TermDensity density) => Peak.Start(density.Log, density.Dimension, apart: 0.125);
}
