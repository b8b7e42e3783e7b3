using System.Collections.Immutable;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>The law of the house: over worlds drawn from the priors, plans are kept as often as they state.</summary>
internal static class PlansKept
{
    internal const long Seed = 20250131;

    /// <summary>Tests worlds, asks for plans, and computes from each world's own numbers with what chance each plan is kept.</summary>
    /// <param name="design">How each world is tested.</param>
    /// <param name="first">The first world; world i is stream i of the seed.</param>
    /// <param name="worlds">How many worlds.</param>
    /// <param name="threads">Threads; the outcomes do not depend on it.</param>
    /// <param name="planner">From a world's number and its test's table to plans.</param>
    internal static ImmutableArray<IReadOnlyList<Outcome>> Run(
        TestDesign design,
        int first,
        int worlds,
        int threads,
        Func<int, FrameTable, IReadOnlyList<Plan>> planner
    )
    {
        var outcomes = new IReadOnlyList<Outcome>[worlds];
        Parallel.For(
            first,
            first + worlds,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                var stream = Randomness.Seed.From(Seed).Stream(i);
                var world = World.Draw(KeeperModel.Default, TestDesign.HalfPoint, stream);
                outcomes[i - first] = [.. planner(i, world.Shoot(design.Shoot, stream)).Select(plan => Judge(world, plan))];
            }
        );
        return [.. outcomes];
    }

    private static Outcome Judge(World world, Plan plan) =>
        plan is { At: { } at, Frames: { } frames }
            ? new(
                plan,
                world.ChanceOf(plan.Keepers, frames, at, plan.BurstsOf),
                plan.PlugIn is { } plugIn ? world.ChanceOf(plan.Keepers, plugIn, at, plan.BurstsOf) : null
            )
            : new(plan, 0, null);
}
