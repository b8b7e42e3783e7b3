using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Prediction;

/// <summary>The rate along exposures: distances are solved once for a set of rates, then each exposure reads its quantiles off a distribution function.</summary>
internal static class BandQuestion
{
    private const int Rates = 97;
    private const double LargestLogit = 12;

    internal static CurveBand Answer(Question question, double fastest, double slowest, int points)
    {
        if (question.Law is not RateLaw law)
            return CurveBand.Pointwise(question.Law, question.Level, fastest, slowest, points);
        var rates = Enumerable.Range(0, Rates).Select(i => -LargestLogit + i * 2 * LargestLogit / (Rates - 1)).ToArray();
        var exposures = Enumerable.Range(0, points).Select(i => fastest + (slowest - fastest) * i / (points - 1)).ToArray();
        var cdf = new double[points, Rates];
        for (var k = 0; k < Rates; k++)
        {
            var exposure = law.Coarse.ExposureFor(Elementary.Logistic(rates[k]).Mu);
            for (var i = 0; i < points; i++)
                cdf[i, k] = exposure.Cdf(exposures[i]);
        }

        var level = question.Level;
        return new([.. exposures], Quantiles(0.5), Quantiles((1 - level) / 2), Quantiles((1 + level) / 2), level);

        ImmutableArray<double> Quantiles(double p) => [.. Enumerable.Range(0, points).Select(i => Quantile(cdf, i, rates, p))];
    }

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
