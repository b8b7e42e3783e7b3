using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Randomness;

namespace Handhold.Laws;

/// <summary>
/// Where truths drawn from the priors lie in the posteriors of frames that they made, levels varying: if posteriors are right, anywhere alike.
/// </summary>
/// <remarks>Source: Talts, Betancourt, Simpson, Vehtari, Gelman (2018), arXiv 1804.06788; ranks are here the posterior's distribution function at the truth.</remarks>
internal static class LevelCalibration
{
    internal const long Seed = 20250606;
    internal const int Photographers = 6;
    internal const int Setups = 2;
    internal const int Frames = 4;

    private static readonly ImmutableArray<double> s_speeds = [-7.5, -6, -4.5, -3, -1.5];

    /// <summary>Photographers that vary in half point and steepness, correlated, their setups in half points; the ceiling estimated.</summary>
    internal static readonly KeeperModel Model = KeeperModel.Default with
    {
        Luck = LuckKind.None,
        Priors = Priors.Default with { HalfPoint = new(-4.5, 1) },
        Varies = [new("photographer", VaryingPart.Both), new("setup") { Within = ["photographer"] }],
    };

    /// <summary>Of each parameter the share of its posterior below the truth, one a replicate.</summary>
    /// <param name="first">The first replicate.</param>
    /// <param name="count">Replicates.</param>
    internal static ImmutableArray<(string Name, ImmutableArray<double> Shares)> Shares(int first, int count)
    {
        var replicates = Enumerable
            .Range(first, count)
            .AsParallel()
            .AsOrdered()
            .WithDegreeOfParallelism(2)
            .Select(i => Replicate(Randomness.Seed.From(Seed).Stream(i)))
            .ToArray();
        return [.. replicates[0].Select((s, i) => (s.Name, replicates.Select(r => r[i].Share).ToImmutableArray()))];
    }

    /// <summary>Largest distance of the shares' distribution function from that of a uniform number.</summary>
    internal static double Distance(ImmutableArray<double> shares)
    {
        var sorted = shares.Sort();
        return Enumerable
            .Range(0, sorted.Length)
            .Max(i => Math.Max((i + 1.0) / sorted.Length - sorted[i], sorted[i] - (double)i / sorted.Length));
    }

    private static (string Name, double Share)[] Replicate(RandomStream stream)
    {
        var (priors, spreads) = (Model.Priors, Model.Priors.Spreads);
        var tau0 = priors.HalfPoint!.Mean + priors.HalfPoint.StandardDeviation * stream.Normal();
        var logB = Math.Log(priors.Steepness.Median) + priors.Steepness.LogStandardDeviation * stream.Normal();
        var ceiling = 1 - stream.Beta(priors.CeilingLoss.A, priors.CeilingLoss.B);
        var tauSd = Math.Abs(spreads.PhotographerTau.Scale * stream.Normal());
        var logBSd = Math.Abs(spreads.PhotographerLogB.Scale * stream.Normal());
        var setupSd = Math.Abs(spreads.SetupTau.Scale * stream.Normal());
        var correlation = 2 * stream.Beta(spreads.Correlation.Shape, spreads.Correlation.Shape) - 1;
        List<FrameCell> cells = [];
        var (firstTau, firstLogB, firstSetup) = (0.0, 0.0, 0.0);
        for (var j = 0; j < Photographers; j++)
        {
            var (z0, z1) = (stream.Normal(), stream.Normal());
            var (tau, steeper) = (tauSd * z0, logBSd * (correlation * z0 + Math.Sqrt(1 - correlation * correlation) * z1));
            for (var k = 0; k < Setups; k++)
            {
                var own = setupSd * stream.Normal();
                if (j == 0 && k == 0)
                    (firstTau, firstLogB, firstSetup) = (tau, steeper, own);
                foreach (var x in s_speeds)
                {
                    var rate = ceiling / (1 + Math.Exp(-Math.Exp(logB + steeper) * (tau0 + tau + own - x)));
                    cells.Add(
                        new(ShutterSpeed.FromLog2Seconds(x), Frames, Enumerable.Range(0, Frames).Count(_ => stream.Happens(rate)))
                        {
                            Conditions = new()
                            {
                                Photographer = FormattableString.Invariant($"p{j}"),
                                Setup = FormattableString.Invariant($"s{k}"),
                            },
                        }
                    );
                }
            }
        }

        var varying = Model.Fit([.. cells]).Only.Varying!;
        var (photographer, setup) = (varying.Level(0, 0).Draws, varying.Level(1, 0).Draws);
        return
        [
            ("tau0", Parameter(d => d.Typical.Tau0, tau0)),
            ("log2b", Parameter(d => d.Typical.LogSteepness, logB)),
            ("ceiling", Parameter(d => d.Typical.Ceiling, ceiling)),
            ("spread of photographers' half points", Parameter(d => d.Loadings[0].Tau, tauSd)),
            ("spread of photographers' steepness", Parameter(d => d.Loadings[0].LogB, logBSd)),
            ("their correlation", Parameter(d => d.Loadings[0].Correlation, correlation)),
            ("spread of setups' half points", Parameter(d => d.Loadings[1].Tau, setupSd)),
            ("half point of one photographer", Level(photographer, d => d.Shift, firstTau)),
            ("steepness of one photographer", Level(photographer, d => d.Steepening, firstLogB)),
            ("half point of one setup", Level(setup, d => d.Shift, firstSetup)),
            (
                "half point of one photographer with one setup",
                Share(varying.With([(0, 0), (1, 0)], []).Draws.Select(d => (d.Tau0 + d.Shift, d.Weight)), tau0 + firstTau + firstSetup)
            ),
        ];

        double Parameter(Func<VaryingDraw, double> value, double truth) =>
            Share(varying.Draws.Select(d => (value(d), d.Typical.Weight)), truth);

        double Level(ImmutableArray<LevelDraw> draws, Func<LevelDraw, double> value, double truth) =>
            Share(draws.Select((d, k) => (value(d), varying.Draws[k].Typical.Weight * d.Ratio * d.Own)), truth);
    }

    private static double Share(IEnumerable<(double Value, double Weight)> points, double truth)
    {
        var (below, all) = (0.0, 0.0);
        foreach (var (value, weight) in points)
            (below, all) = (below + (value < truth ? weight : 0), all + weight);
        return below / all;
    }
}
