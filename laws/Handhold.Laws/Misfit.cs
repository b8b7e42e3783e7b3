using System.Collections.Immutable;
using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>How often <see cref="StatusCode.CurveDoesNotFit"/> is raised, where it should not be and where it should.</summary>
internal static class Misfit
{
    internal const long Seed = 20250201;
    internal const double Dip = 0.2;
    internal static readonly ImmutableArray<int> FramesASpeed = [6, 12, 24, 48];

    /// <summary>The curve of which one speed is lowered: the middle speed, 1/40 s, sits one stop on the fast side of the half point.</summary>
    internal static readonly World Usual = new()
    {
        HalfPoint = Math.Log2(1.0 / 20),
        Steepness = 1.6,
        Ceiling = 0.97,
        SessionLuck = 0.25,
        BurstLuck = 0.15,
    };

    /// <summary>Share of worlds whose curve was said not to fit though the world obeys the model.</summary>
    internal static double FalseAlarms(IReadOnlyCollection<IReadOnlyList<Outcome>> worlds) =>
        (double)worlds.Count(plans => plans[0].Plan.DoesNotFit) / worlds.Count;

    /// <summary>Share of fits that raise it when the rate at the middle speed is 20 points lower than the usual curve's.</summary>
    internal static double Power(int framesASpeed, int worlds, int threads)
    {
        var plan = TestDesign.Plan(bursts: framesASpeed / 3, burstOf: 3);
        var middle = plan.Speeds[plan.Speeds.Length / 2];
        var spoiled = Dip / Usual.RateAt(middle);
        return Share(
            worlds,
            threads,
            stream =>
                [
                    .. Usual
                        .Shoot(plan, stream)
                        .Select(row => row.Exposure == middle && row.Keepers == 1 && stream.Happens(spoiled) ? Rejected(row) : row),
                ]
        );
    }

    private static FrameCell Rejected(FrameCell row) => new(row.Exposure, row.Frames, 0) { Conditions = row.Conditions };

    private static double Share(int worlds, int threads, Func<RandomStream, FrameTable> shoot)
    {
        var raised = 0;
        Parallel.For(
            0,
            worlds,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                var curve = KeeperModel.Default.Fit(shoot(Randomness.Seed.From(Seed).Stream(i))).Only;
                if (curve.Statuses.Any(s => s.Code == StatusCode.CurveDoesNotFit))
                {
                    Interlocked.Increment(ref raised);
                }
            }
        );
        return (double)raised / worlds;
    }
}
