using System.Collections.Immutable;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>How often the 90 % interval of an effect in stops contains it, over worlds drawn from the priors.</summary>
internal static class EffectsInStops
{
    internal const long Seed = 20250206;
    internal const double Level = 0.9;
    private static readonly Conditions s_usual = new() { EquivalentFocalLength = 50, Criterion = Criterion.Print };
    internal static readonly ImmutableArray<(string Name, ImmutableArray<string> Terms, ImmutableArray<Conditions> Settings)> Tests =
    [
        (
            "a stabiliser of 4 rated stops on and off, far away and at life size",
            ["stabiliser", "magnification"],
            [
                .. from magnification in new[] { 0.02, 1 }
                from stops in new[] { 0.0, 4 }
                select s_usual with
                {
                    Magnification = magnification,
                    StabiliserStops = stops,
                    StabiliserMode = stops == 0 ? "off" : "lens",
                },
            ]
        ),
        (
            "still, slightly and briskly moving subjects at 50 and 200 mm",
            ["subjectMotion", "focal"],
            [
                .. from focal in new[] { 50.0, 200 }
                from motion in new[] { "still", "slight", "brisk" }
                select s_usual with
                {
                    EquivalentFocalLength = focal,
                    SubjectMotion = motion,
                },
            ]
        ),
    ];

    private static ShootPlan Plan { get; } =
        new()
        {
            Speeds = [.. Enumerable.Range(0, 6).Select(i => ShutterSpeed.FromLog2Seconds(2 * i - 11))],
            Bursts = 1,
            BurstOf = 4,
        };

    /// <returns>For each effect, whether each world's was in its interval.</returns>
    internal static ImmutableSortedDictionary<string, ImmutableArray<bool>> Covered(int test, int first, int worlds, int threads)
    {
        var (_, terms, settings) = Tests[test];
        var model = KeeperModel.Default with { Terms = terms, Level = Level };
        var found = new (string Effect, bool Covered)[worlds][];
        Parallel.For(
            0,
            worlds,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                var stream = Randomness.Seed.From(Seed).Stream(2 * (first + i) + test);
                var world = MovingWorld.Draw(stream);
                var curve = model.Fit(world.Shoot(settings, Plan, stream)).Only;
                found[i] =
                [
                    .. curve.InStops.Select(effect =>
                    {
                        var truth = Truth(world, effect, curve.ReferenceConditions);
                        return (string.Join(", ", effect.Words), effect.Lower <= truth && truth <= effect.Upper);
                    }),
                ];
            }
        );
        return found
            .SelectMany(f => f)
            .GroupBy(f => f.Effect)
            .ToImmutableSortedDictionary(g => g.Key, g => g.Select(f => f.Covered).ToImmutableArray());
    }

    private static double Truth(MovingWorld world, TermInStops effect, Conditions reference)
    {
        var at = effect.At.ToDictionary();
        var here =
            at.TryGetValue("magnification", out var magnification) && effect.Term != "magnification"
                ? reference with
                {
                    Magnification = magnification,
                }
                : reference;
        var (before, after) = effect.Term switch
        {
            "stabiliser=lens" => (here with { StabiliserStops = 0 }, here with { StabiliserStops = at["stabiliser_stops"] }),
            "magnification" => (here with { Magnification = 0 }, here with { Magnification = magnification }),
            "focal" => (here, here with { EquivalentFocalLength = 2 * here.EquivalentFocalLength }),
            _ => (here with { SubjectMotion = "still" }, here with { SubjectMotion = effect.Term.Split('=')[1] }),
        };
        return world.HalfPoint(after) - world.HalfPoint(before);
    }
}
