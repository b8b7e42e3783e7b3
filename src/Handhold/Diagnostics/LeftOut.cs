using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Randomness;

namespace Handhold.Diagnostics;

/// <summary>A cell left out of weighted points by dividing their weights by its likelihood there.</summary>
/// <param name="exposures">The asked exposure at each point, log2 seconds; infinite where the rate is out of reach.</param>
/// <param name="chance">Of the residuals.</param>
internal sealed class LeftOut(double[] exposures, RandomStream chance)
{
    private const double Unreliable = 0.7;
    private const double Negligible = 1e-9;

    /// <param name="cells">The cell.</param>
    /// <param name="weights">Of the points; they add up to one.</param>
    /// <param name="logs">The cell's log-likelihood at each point.</param>
    /// <param name="law">The law of its keepers at a point.</param>
    internal CellCheck Check(ImmutableArray<FrameCell> cells, double[] weights, double[] logs, Func<int, CountLaw> law)
    {
        var least = logs.Where((_, k) => weights[k] > 0).Min();
        double[] without = [.. weights.Select((w, k) => w == 0 ? 0 : w * Math.Exp(least - logs[k]))];
        var (total, keepers) = (without.Sum(), cells.Sum(c => c.Keepers));
        var (fewer, exactly) = (0.0, 0.0);
        for (var k = 0; k < without.Length; k++)
        {
            if (without[k] < Negligible * total)
                continue;
            var (below, same, _) = law(k).Around(keepers);
            fewer += without[k] / total * below;
            exactly += without[k] / total * same;
        }

        WeightedValues likelihood = new([.. logs.Zip(weights).Where(p => p.Second > 0)]);
        return new(cells)
        {
            Residual = CellCheck.RandomisedQuantile(fewer, exactly, chance),
            Leverage = likelihood.StandardDeviation * likelihood.StandardDeviation,
            Influence = Median(weights) is { } before && Median(without) is { } rest ? new Stops(rest - before) : null,
            LogPredictiveDensity = least - Math.Log(total),
            IsReliable = !(ParetoTail.Shape(without) > Unreliable),
        };
    }

    private double? Median(double[] by)
    {
        var reached = exposures.Zip(by).Where(p => double.IsFinite(p.First)).ToArray();
        return reached.Sum(p => p.Second) > 0.5 * by.Sum() ? new WeightedValues(reached).Quantile(0.5) : null;
    }
}
