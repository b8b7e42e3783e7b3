using System.Collections.Immutable;
using Handhold.Fitting;
using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>How often <see cref="StatusCode.CurveDoesNotFit"/> is raised, where it should not be and where it should.</summary>
internal static class Misfit
{
    internal const long Seed = 20250201;
    internal static readonly ImmutableArray<int> FramesASpeed = [6, 12, 24, 48, 96];
    internal static readonly ImmutableArray<double> Dips = [0.2, 0.4];

    /// <summary>The worlds have no term for the first frame of a burst, though its place is recorded.</summary>
    internal static readonly KeeperModel Model = TestDesign.Model;

    /// <summary>The curve of which one speed is lowered: the middle speed, 1/40 s, sits one stop on the fast side of the half point.</summary>
    internal static readonly World Usual = new()
    {
        HalfPoint = Math.Log2(1.0 / 20),
        Steepness = 1.6,
        Ceiling = 0.97,
        SessionLuck = 0.25,
        BurstLuck = 0.15,
    };

    /// <summary>Share of worlds whose curve is said not to fit though the world obeys the model.</summary>
    internal static double FalseAlarms(int worlds, int threads) =>
        Share(
            worlds,
            threads,
            stream => World.Draw(KeeperModel.Default, TestDesign.HalfPoint, stream).Shoot(TestDesign.TwoBurstsOfThree.Shoot, stream)
        );

    /// <summary>Share of tests in which it is raised when the rate at the middle speed is lower by a dip than the usual curve's.</summary>
    internal static double Power(int framesASpeed, double dip, int worlds, int threads) =>
        Share(worlds, threads, stream => Dipped(framesASpeed, dip, stream));

    /// <summary>One test of the usual curve with its dip.</summary>
    internal static FrameTable Dipped(int framesASpeed, double dip, RandomStream stream)
    {
        var plan = TestDesign.Plan(bursts: framesASpeed / 3, burstOf: 3);
        var middle = plan.Speeds[plan.Speeds.Length / 2];
        var spoiled = dip / Usual.RateAt(middle);
        return
        [
            .. Usual
                .Shoot(plan, stream)
                .Select(row => row.Exposure == middle && row.Keepers == 1 && stream.Happens(spoiled) ? Rejected(row) : row),
        ];
    }

    /// <summary>Whether a fit of the table would carry the status; it needs the frames, not the fit.</summary>
    internal static bool IsAlarming(FrameTable table)
    {
        var rows = CurveRows.Split(Model, table).Single();
        var statuses = ImmutableArray.CreateBuilder<Status>();
        CurveStatuses.AddMisfit(LeaveOneOut.Of(Model, rows), statuses);
        return statuses.Count > 0;
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
                if (IsAlarming(shoot(Randomness.Seed.From(Seed).Stream(i))))
                {
                    Interlocked.Increment(ref raised);
                }
            }
        );
        return (double)raised / worlds;
    }
}
