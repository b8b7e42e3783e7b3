using System.Collections.Immutable;

namespace Handhold.Laws;

/// <summary>The law of the house: over worlds drawn from the priors, plans are kept as often as they state.</summary>
internal static class PlansKept
{
    internal const long Seed = 20250131;

    /// <summary>Below this true rate it is asked whether a broken plan was said to rest on the prior.</summary>
    internal const double Slow = 0.2;

    /// <summary>Tests worlds, asks for plans, and computes from each world's own numbers with what chance each plan is kept.</summary>
    /// <param name="design">How each world is tested.</param>
    /// <param name="first">The first world; world i is stream i of the seed.</param>
    /// <param name="worlds">How many worlds.</param>
    /// <param name="threads">Threads; the outcomes do not depend on it.</param>
    /// <param name="planner">From a world's number and its test's table to plans.</param>
    /// <param name="family">Where the worlds come from; null: the priors.</param>
    internal static ImmutableArray<IReadOnlyList<Outcome>> Run(
        TestDesign design,
        int first,
        int worlds,
        int threads,
        Func<int, FrameTable, IReadOnlyList<Plan>> planner,
        WorldFamily? family = null
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
                var truth = (family ?? WorldFamily.Priors).Draw(stream);
                outcomes[i - first] = Judge(truth, planner(i, truth.Shoot(design.Shoot, stream)));
            }
        );
        return [.. outcomes];
    }

    private static Outcome[] Judge(Truth truth, IReadOnlyList<Plan> plans)
    {
        var chances = plans.Where(p => p.At is not null).Select(p => p.At!.Value).Distinct().ToDictionary(at => at, truth.Shooting);
        return [.. plans.Select(plan => plan.At is { } at ? Judge(chances[at], plan) : new(plan, 0, null))];
    }

    private static Outcome Judge(Chance chance, Plan plan)
    {
        var rate = chance(1, 1, null);
        if (plan.Frames is not { } frames)
        {
            return new(plan with { RestsOnPrior = null }, 0, null, rate);
        }
        var kept = chance(plan.Keepers, frames, plan.BurstsOf);
        double? plugIn = plan.PlugIn is { } fewer ? chance(plan.Keepers, fewer, plan.BurstsOf) : null;
        var rested = kept < plan.Assurance && rate < Slow && plan.RestsOnPrior?.Invoke() == true;
        return new(plan with { RestsOnPrior = null }, kept, plugIn, rate, rested); // the question holds on to the curve
    }
}
