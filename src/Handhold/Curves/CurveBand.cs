using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold;

/// <summary>The keeper rate along exposures, for drawing: equal-tailed at each exposure.</summary>
public sealed class CurveBand
{
    private const int Rates = 97;
    private const double LargestLogit = 12;

    internal CurveBand(
        ImmutableArray<double> log2Seconds,
        ImmutableArray<double> median,
        ImmutableArray<double> lower,
        ImmutableArray<double> upper,
        double level
    ) => (Log2Seconds, Median, Lower, Upper, Level) = (log2Seconds, median, lower, upper, level);

    /// <summary>Exposures, log2 seconds, rising.</summary>
    public ImmutableArray<double> Log2Seconds { get; }

    /// <summary>Median rate.</summary>
    public ImmutableArray<double> Median { get; }

    /// <summary>Lower end.</summary>
    public ImmutableArray<double> Lower { get; }

    /// <summary>Upper end.</summary>
    public ImmutableArray<double> Upper { get; }

    /// <summary>Probability inside.</summary>
    public double Level { get; }

    /// <summary>The band of a law, for so many exposures. Of a posterior distances are solved once for a set of rates, then each exposure reads its quantiles off a distribution function.</summary>
    internal static CurveBand Of(IRateLaw law, double level, double fastest, double slowest, int points)
    {
        if (law is not RateLaw day)
            return Pointwise(law, level, fastest, slowest, points);
        var rates = Enumerable.Range(0, Rates).Select(i => -LargestLogit + i * 2 * LargestLogit / (Rates - 1)).ToArray();
        var exposures = Exposures(fastest, slowest, points);
        double[] wanted = [0.5, (1 - level) / 2, (1 + level) / 2];
        var cdf = new double[points, Rates];
        var coarse = day.Coarse;
        Search(0, Rates, [.. Enumerable.Range(0, points).SelectMany(_ => wanted, (i, p) => (i, p))]);
        return new(exposures, Quantiles(wanted[0]), Quantiles(wanted[1]), Quantiles(wanted[2]), level);

        // Finds, of rates from low to before high, the first whose distribution function is a quantile's or more, for all quantiles at once: only what they need is computed.
        void Search(int low, int high, ImmutableArray<(int Row, double P)> open)
        {
            if (low == high || open.IsEmpty)
                return;
            var middle = (low + high) / 2;
            var exposure = coarse.ExposureFor(Elementary.Logistic(rates[middle]).Mu);
            foreach (var row in open.Select(o => o.Row).Distinct())
                cdf[row, middle] = exposure.Cdf(exposures[row]);
            Search(low, middle, [.. open.Where(o => cdf[o.Row, middle] >= o.P)]);
            Search(middle + 1, high, [.. open.Where(o => cdf[o.Row, middle] < o.P)]);
        }

        ImmutableArray<double> Quantiles(double p) => [.. Enumerable.Range(0, points).Select(i => Quantile(cdf, i, rates, p))];
    }

    /// <summary>Intervals of each exposure by itself; where the data leave the rate open, the line runs through the middle.</summary>
    private static CurveBand Pointwise(IRateLaw law, double level, double fastest, double slowest, int points)
    {
        var exposures = Exposures(fastest, slowest, points);
        ImmutableArray<double> lower = [.. exposures.Select(x => law.RateQuantile(x, (1 - level) / 2))];
        ImmutableArray<double> upper = [.. exposures.Select(x => law.RateQuantile(x, (1 + level) / 2))];
        ImmutableArray<double> middle =
        [
            .. exposures.Select((x, i) => law.MeanRate(x) is var rate and >= 0 ? rate : (lower[i] + upper[i]) / 2),
        ];
        return new(exposures, middle, lower, upper, level);
    }

    private static ImmutableArray<double> Exposures(double fastest, double slowest, int points) =>
        [.. Enumerable.Range(0, points).Select(i => fastest + (slowest - fastest) * i / (points - 1))];

    /// <summary>A quantile between the two rates around it; the distribution function is zero where it was not needed.</summary>
    private static double Quantile(double[,] cdf, int row, double[] logits, double p)
    {
        var k = 0;
        while (k < Rates - 1 && cdf[row, k] < p)
            k++;
        if (k == 0)
            return Elementary.Logistic(logits[0]).Mu;
        // Between nodes the distribution is taken as normal in logits: straight in its own quantiles, where straight in the probabilities shows as facets.
        var (before, after, at) = (Normal.Quantile(cdf[row, k - 1]), Normal.Quantile(Math.Min(1, cdf[row, k])), Normal.Quantile(p));
        var share = double.IsFinite(before) && double.IsFinite(after) ? (at - before) / (after - before) : 1;
        return Elementary.Logistic(logits[k - 1] + share * (logits[k] - logits[k - 1])).Mu;
    }
}
