using System.Collections.Immutable;
using Handhold.Fitting;
using Handhold.Kernels;
using Handhold.Randomness;

namespace Handhold.Laws;

/// <summary>How often <see cref="StatusCode.CurveDoesNotFit"/> is raised where levels vary, of clubs that obey the model and of clubs that do not.</summary>
internal static class LevelMisfit
{
    internal const long Seed = 20250909;
    internal static readonly ImmutableArray<double> Dips = [0.3, 0.6];
    private const int Photographers = 4;
    private const int Frames = 6;
    private const int Size = 64; // the check needs the top of the parameters' density, not its points

    private static readonly KeeperModel s_model = KeeperModel.Default with
    {
        Each = [],
        Varies = [new("photographer")],
        Priors = Priors.Default with { HalfPoint = new(-4.5, 1) },
    };

    /// <summary>Share of clubs said not to fit: drawn from the priors, and at one of six speeds so many of the keepers lost as a dip says.</summary>
    internal static double Alarms(int clubs, int threads, double dip = 0)
    {
        var raised = 0;
        Parallel.For(
            0,
            clubs,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                if (IsAlarming(Shoot(Randomness.Seed.From(Seed).Stream(i), dip)))
                    Interlocked.Increment(ref raised);
            }
        );
        return (double)raised / clubs;
    }

    /// <summary>Whether a fit of the table would carry the status.</summary>
    internal static bool IsAlarming(FrameTable table)
    {
        var rows = CurveRows.Split(s_model, table).Single();
        VaryingLeaveOneOut others = new(s_model, rows.Data, VaryingSample.Of(s_model, rows, Size, rough: true, null, default));
        var statuses = ImmutableArray.CreateBuilder<Status>();
        CurveStatuses.AddMisfit(others.Suspicious, statuses, others.Count);
        return statuses.Count > 0;
    }

    /// <summary>Four photographers, a day each, six speeds a stop apart, six frames a speed in two bursts.</summary>
    private static FrameTable Shoot(RandomStream chance, double dip)
    {
        var (priors, spreads) = (s_model.Priors, s_model.Priors.Spreads);
        var tau = priors.HalfPoint!.Mean + priors.HalfPoint.StandardDeviation * chance.Normal();
        var logB = Math.Log(priors.Steepness.Median) + priors.Steepness.LogStandardDeviation * chance.Normal();
        var ceiling = 1 - chance.Beta(priors.CeilingLoss.A, priors.CeilingLoss.B);
        var (tauSd, daySd, burstSd) = (Sd(spreads.PhotographerTau), Sd(priors.SessionLuck), Sd(priors.BurstLuck));
        List<FrameCell> cells = [];
        for (var p = 0; p < Photographers; p++)
        {
            var half = tau + tauSd * chance.Normal() + daySd * chance.Normal();
            for (var x = -7; x <= -2; x++)
            for (var burst = 0; burst < 2; burst++)
            {
                var rate =
                    ceiling * Elementary.Logistic(Math.Exp(logB) * (half + burstSd * chance.Normal() - x)).Mu * (x == -4 ? 1 - dip : 1);
                cells.Add(
                    new(ShutterSpeed.FromLog2Seconds(x), Frames / 2, Enumerable.Range(0, Frames / 2).Count(_ => chance.Happens(rate)))
                    {
                        Conditions = new()
                        {
                            Photographer = FormattableString.Invariant($"p{p}"),
                            Burst = FormattableString.Invariant($"{x}-{burst}"),
                        },
                    }
                );
            }
        }

        return [.. cells];

        double Sd(HalfNormalPrior prior) => Math.Abs(prior.Scale * chance.Normal());
    }
}
