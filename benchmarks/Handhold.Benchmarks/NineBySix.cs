using Handhold.Randomness;
using Handhold.Simulation;
using Handhold.Solvers;
using static Handhold.ShutterSpeed;

namespace Handhold.Benchmarks;

/// <summary>The table that everything is measured on: one curve of nine speeds by six frames in two bursts of 3, simulated with a fixed seed.</summary>
internal static class NineBySix
{
    internal static FrameTable Table { get; } = Shoot(Seed.From(20250131).Stream(0));

    internal static double[] Stops { get; } = [.. Speeds().Select(s => s.Key.Log2Seconds)];

    internal static int[] Frames { get; } = [.. Speeds().Select(s => s.Sum(row => row.Frames))];

    internal static int[] Keepers { get; } = [.. Speeds().Select(s => s.Sum(row => row.Keepers))];

    /// <summary>A one and the exposure in stops, row by row.</summary>
    internal static double[] Design { get; } = [.. Stops.SelectMany(x => (double[])[1, x])];

    internal static BinomialProblem Problem { get; } = new(["intercept", "log2Exposure"], Design, Frames, Keepers);

    internal static FrameTable Shoot(RandomStream draws)
    {
        World world = new()
        {
            HalfPoint = -5,
            Steepness = 1.6,
            Ceiling = 0.97,
            SessionLuck = 0.3,
            BurstLuck = 0.2,
        };
        ShootPlan plan = new() { Speeds = [.. new[] { 500, 250, 125, 60, 30, 15, 8, 4, 2 }.Select(d => OneOver(d))] };
        return world.Shoot(plan, draws);
    }

    private static IEnumerable<IGrouping<ShutterSpeed, FrameCell>> Speeds() => Table.GroupBy(row => row.Exposure);
}
