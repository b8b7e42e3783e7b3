using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Fitting;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Diagnostics;

/// <summary>Cells left out of a posterior by reweighting points that stand for it.</summary>
internal static class PosteriorChecks
{
    private const int Points = 1024;
    private const double Unreliable = 0.7;

    internal static (double?[] Fitted, ImmutableArray<CellCheck> Cells) Of(KeeperCurve curve, double rate, Conditions conditions, int seed)
    {
        var model = curve.Model;
        CurveRows rows = new(curve.Key, curve.Data, new(curve.HalfPointPrior!));
        var moved = rows.Moved(model);
        var frames = TermObservations.From(moved, curve.Data.Cells, model.Luck);
        TermDensity density = new(model, moved, frames);
        var sample = WeightedSample.Of(density.Log, TermSample.Start(density), Points, Seed.From(seed).Stream(0).Bits, default);
        double[] weights = [.. sample.Weights];
        double[] exposures = Exposures();
        var (before, chance) = (Median(weights), Seed.From(seed).Stream(1));
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
                    .Select(k => TermSample.Draw(density, moved, sample, k))
                    .Select(d =>
                        rate >= d.Ceiling ? double.NegativeInfinity
                        : rate <= d.Floor ? double.PositiveInfinity
                        : TermPosterior.Exposure(d, setting, rate, tables)
                    ),
            ];
        }

        double? Median(double[] by)
        {
            var reached = exposures.Zip(by).Where(p => double.IsFinite(p.First)).ToArray();
            return reached.Sum(p => p.Second) > 0.5 * by.Sum() ? new WeightedValues(reached).Quantile(0.5) : null;
        }

        CellCheck Check(ImmutableArray<FrameCell> cells, TermObservations alone)
        {
            double[] logs = [.. Enumerable.Range(0, Points).Select(k => density.LogLikelihood(sample.Point(k), alone))];
            var least = logs.Where((_, k) => weights[k] > 0).Min();
            double[] without = [.. weights.Select((w, k) => w == 0 ? 0 : w * Math.Exp(least - logs[k]))];
            var (total, keepers) = (without.Sum(), cells.Sum(c => c.Keepers));
            var (fewer, exactly) = (0.0, 0.0);
            for (var k = 0; k < Points; k++)
            {
                if (without[k] < 1e-9 * total)
                    continue;
                var (below, same, _) = density.Count(sample.Point(k), alone).Around(keepers);
                fewer += without[k] / total * below;
                exactly += without[k] / total * same;
            }

            WeightedValues likelihood = new([.. logs.Zip(weights).Where(p => p.Second > 0)]);
            return new(cells)
            {
                Residual = CellCheck.RandomisedQuantile(fewer, exactly, chance),
                Leverage = likelihood.StandardDeviation * likelihood.StandardDeviation,
                Influence = before is { } all && Median(without) is { } rest ? new Stops(rest - all) : null,
                LogPredictiveDensity = least - Math.Log(total),
                IsReliable = !(ParetoTail.Shape(without) > Unreliable),
            };
        }
    }
}
