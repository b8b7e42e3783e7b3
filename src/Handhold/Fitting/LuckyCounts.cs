using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>Keepers among frames whose bursts share the luck of a fit.</summary>
internal static class LuckyCounts
{
    private const int Nodes = 15;

    private static GaussRule Luck { get; } = GaussRule.Hermite(Nodes);

    /// <summary>The law of the keepers of some rows, given coefficients.</summary>
    /// <param name="problem">Clusters with these rows.</param>
    /// <param name="rows">Which rows.</param>
    /// <param name="fit">Its spread is the luck.</param>
    internal static Func<double[], CountLaw> At(ClusteredProblem problem, IReadOnlySet<int> rows, ClusteredFit fit)
    {
        // Counts do not depend on what was kept: clusters of equal rows and frames are alike.
        (int[] Rows, int Count)[] bursts =
        [
            .. Enumerable
                .Range(0, problem.Clusters)
                .Select(c =>
                    (
                        Rows: Enumerable.Range(problem.Starts[c], problem.Starts[c + 1] - problem.Starts[c]).Where(rows.Contains).ToArray(),
                        problem.Weights[c]
                    )
                )
                .Where(burst => burst.Rows.Length > 0)
                .GroupBy(burst => string.Join(';', burst.Rows.Select(problem.Rows.Signature)))
                .Select(g => (g.First().Rows, g.Sum(burst => burst.Item2))),
        ];
        return coefficients =>
            bursts.Aggregate(CountLaw.Nothing, (sum, burst) => sum.Plus(OfBurst(problem.Rows, burst.Rows, fit, coefficients), burst.Count));
    }

    private static CountLaw OfBurst(BinomialProblem problem, int[] rows, ClusteredFit fit, double[] coefficients)
    {
        if (fit.Luck == SharedLuck.BetaRates && fit.Spread > 0)
        {
            var (keep, miss) = Rate(rows[0], 0);
            return CountLaw.BetaBinomial(problem.Frames.Span[rows[0]], keep, miss, BetaRates.Correlation(fit.Spread));
        }

        var laws = new CountLaw[Nodes];
        for (var q = 0; q < Nodes; q++)
        {
            laws[q] = CountLaw.Nothing;
            foreach (var row in rows)
            {
                var (keep, miss) = Rate(row, fit.Spread * Luck.Nodes[q]);
                laws[q] = laws[q].Plus(CountLaw.Binomial(problem.Frames.Span[row], keep, miss));
            }
        }

        return CountLaw.Mixed(Luck.Weights.AsSpan(), laws);

        (double Keep, double Miss) Rate(int row, double shift) =>
            Links.Capped(problem.Link, problem.Predictor(row, coefficients) + shift, fit.Estimate.Ceiling, fit.Estimate.Floor);
    }
}
