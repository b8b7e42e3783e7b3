namespace Handhold.Solvers;

/// <summary>The frames of a cluster share a rate drawn from a beta distribution: beta-binomial counts of a constant correlation ρ, spread² = ρ / (1 - ρ).</summary>
/// <remarks>
/// With v = spread², Σ log(μ + j v) over j below the keepers, + Σ log(1 - μ + j v) over j below the rejects, - Σ log(1 + j v) over j below the frames: exact
/// also at v = 0, where it is the binomial. Source: Griffiths (1973), Biometrics 29, 637-648, as products. A cluster has one row.
/// </remarks>
internal sealed class BetaRates(ClusteredProblem problem) : IClusterLaw
{
    private readonly Link _link = problem.Rows.Link;
    private readonly double _ceiling = problem.Rows.Ceiling!.Value;
    private readonly double _floor = problem.Rows.Floor!.Value;

    /// <summary>ρ of a spread.</summary>
    internal static double Correlation(double spread) => spread * spread / (1 + spread * spread);

    /// <summary>The derivative of ρ.</summary>
    internal static double CorrelationSlope(double spread) => 2 * spread / ((1 + spread * spread) * (1 + spread * spread));

    /// <summary>The spread of a ρ.</summary>
    internal static double Spread(double correlation) => Math.Sqrt(correlation / (1 - correlation));

    public double LogLikelihood(Cluster cluster, double spread)
    {
        var at = At(cluster);
        var v = spread * spread;
        return Sum(cluster.Keepers[0], at.Rate, at.LogRate, v)
            + Sum(cluster.Rejects[0], at.Miss, at.LogMiss, v)
            - Sum(cluster.Keepers[0] + cluster.Rejects[0], 1, 0, v);

        static double Sum(int count, double rate, double logRate, double v)
        {
            var sum = count == 0 ? 0 : logRate;
            for (var j = 1; j < count; j++)
                sum += v == 0 ? logRate : Math.Log(rate + j * v);
            return sum;
        }
    }

    public double Evaluate(Cluster cluster, double spread, Span<double> gradient, Span<double> curvature)
    {
        var (at, v) = (At(cluster), spread * spread);
        var (kept, rejects) = (cluster.Keepers[0], cluster.Rejects[0]);
        var (score, observed, byLuck, cross, bend) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var j = 0; j < kept; j++)
            Add(at.Rate, at.Up, at.UpLoss, j, 1);
        for (var j = 0; j < rejects; j++)
            Add(at.Miss, at.Down, at.DownGain, j, -1);
        for (var j = 1; j < kept + rejects; j++)
        {
            var part = j / (1 + j * v);
            (byLuck, bend) = (byLuck - part, bend + part * part);
        }
        (gradient[0], gradient[1]) = (score, 2 * spread * byLuck);
        (curvature[0], curvature[2], curvature[3]) = (observed, -2 * spread * cross, -2 * byLuck - 4 * v * bend);
        return LogLikelihood(cluster, spread);

        // One factor rate + j v, whose log rises by way · pull in the predictor when j is zero.
        void Add(double rate, double pull, double loss, int j, int way)
        {
            if (j == 0)
            {
                score += way * pull;
                observed += pull * loss;
                return;
            }
            var (share, part) = (rate / (rate + j * v), j / (rate + j * v));
            score += way * pull * share;
            // Minus the derivative of pull · share: loss where the share is one.
            observed += pull * share * (loss - pull * (1 - share));
            byLuck += part;
            cross -= way * pull * share * part;
            bend -= part * part;
        }
    }

    private RatePoint At(Cluster cluster) => new(_link, cluster.Predictors[0], _ceiling, _floor);
}
