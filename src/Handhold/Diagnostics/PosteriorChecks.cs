using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Fitting;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Diagnostics;

/// <summary>Cells left out of a posterior by reweighting points that stand for it.</summary>
internal static class PosteriorChecks
{
    private const int Points = 1024;

    internal static (double?[] Fitted, ImmutableArray<CellCheck> Cells) Of(KeeperCurve curve, double rate, Conditions conditions, int seed)
    {
        var model = curve.Model;
        CurveRows rows = new(curve.Key, curve.Data, new(curve.HalfPointPrior!));
        var moved = rows.Moved(model);
        var frames = TermObservations.From(moved, curve.Data.Cells, model.Luck);
        TermDensity density = new(model, moved, frames);
        var sample = WeightedSample.Of(density.Log, TermSample.Start(density), Points, Seed.From(seed).Stream(0).Bits, default);
        double[] weights = [.. sample.Weights];
        LeftOut left = new(Exposures(), Seed.From(seed).Stream(1));
        return (
            [.. curve.Data.Speeds.Select(s => Mean(frames.Where(c => c.Exposure == s.Exposure.Log2Seconds)) / s.Frames)],
            [.. frames.Units(moved, curve.Data.Cells, model.Luck).Select(u => Check(u.Cells, u.Alone))]
        );

        double Mean(TermObservations some) => weights.Select((w, k) => w * density.Count(sample.Point(k), some).Mean).Sum();

        double[] Exposures()
        {
            var (setting, tables) = (moved.Read(conditions), new Dictionary<double, BurstCurve>());
            return
            [
                .. Enumerable
                    .Range(0, Points)
                    .Select(k => TermPosterior.AskedExposure(TermSample.Draw(density, moved, sample, k), setting, rate, tables)),
            ];
        }

        CellCheck Check(ImmutableArray<FrameCell> cells, TermObservations alone) =>
            left.Check(
                cells,
                weights,
                [.. Enumerable.Range(0, Points).Select(k => density.LogLikelihood(sample.Point(k), alone))],
                k => density.Count(sample.Point(k), alone)
            );
    }
}
