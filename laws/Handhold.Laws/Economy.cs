using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold.Laws;

/// <summary>What honesty costs: frames asked by the library against those of an oracle whose prior is the family of the worlds, same data, same kept share.</summary>
/// <param name="Family">Where the worlds come from.</param>
/// <param name="Oracle">The model of one who knows the family.</param>
/// <param name="Faster">Stops by which plans are faster than the library's half-keeper speed.</param>
internal sealed record Economy(WorldFamily Family, KeeperModel Oracle, int Faster)
{
    private const int Blocks = 10; // for the Monte Carlo error
    private static readonly ImmutableArray<double> Asked = [0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.93, 0.95, 0.97, 0.98, 0.99, 0.995, 0.998];
    private static readonly KeeperModel Library = TestDesign.Model;

    private static readonly ImmutableArray<(WorldFamily Family, KeeperModel Oracle)> Oracles =
    [
        (WorldFamily.Steep, Library with { Priors = Library.Priors with { Steepness = new(Median: 3.2, LogStandardDeviation: 0.02) } }),
        (
            WorldFamily.Misjudging,
            Library with
            {
                Judging = new() { Sensitivity = 0.95, Specificity = 0.95 },
            }
        ),
    ];

    internal static readonly ImmutableArray<Economy> All =
    [
        .. from known in Oracles from faster in new[] { 0, 1 } select new Economy(known.Family, known.Oracle, faster),
    ];

    internal string Title => $"worlds {Family.Name}; {(Faster == 0 ? "at" : "one stop faster than")} the half-keeper speed";

    /// <summary>Kept shares at which the two are compared.</summary>
    private static readonly ImmutableArray<double> Shares = [0.8, 0.9, 0.95];

    /// <summary>By kept share: geometric means of the frames asked, their ratio and its Monte Carlo error. Worlds whose half-keeper speed the library declines are left out.</summary>
    internal ImmutableArray<Cost> Run(int worlds, int threads)
    {
        var tested = new (Tuning Library, Tuning Oracle)?[worlds];
        Parallel.For(
            0,
            worlds,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                var stream = Randomness.Seed.From(PlansKept.Seed).Stream(i);
                var truth = Family.Draw(stream);
                var table = truth.Shoot(TestDesign.TwoBurstsOfThree.Shoot, stream);
                var curve = Library.Fit(table).Only;
                if (curve.HalfKeeperExposure(Planning.Usual).Exposure is not { } half)
                {
                    return;
                }
                var at = MarkedSpeeds.Nearest(ShutterSpeed.FromLog2Seconds(half.Log2Seconds - Faster), Marks.Third);
                var chance = truth.Shooting(at);
                tested[i] = (Tuning.Of(curve, at, chance), Tuning.Of(Oracle.Fit(table).Only, at, chance));
            }
        );
        var planned = tested.OfType<(Tuning, Tuning)>().ToArray();
        return [.. Shares.Select(kept => Compare(planned, kept))];
    }

    private static Cost Compare((Tuning Library, Tuning Oracle)[] worlds, double kept)
    {
        var (library, oracle) = (LogFrames(worlds.Select(w => w.Library), kept), LogFrames(worlds.Select(w => w.Oracle), kept));
        var without = Enumerable
            .Range(0, Blocks)
            .Select(block => worlds.Where((_, i) => i % Blocks != block).ToArray())
            .Select(rest => LogFrames(rest.Select(w => w.Library), kept) - LogFrames(rest.Select(w => w.Oracle), kept))
            .ToArray();
        var mean = without.Average();
        var error = Math.Sqrt((Blocks - 1.0) / Blocks * without.Sum(d => Math.Pow(d - mean, 2)));
        return new(kept, Math.Exp(library), Math.Exp(oracle), Math.Exp(library - oracle) * error);
    }

    /// <summary>Mean logarithm of the frames at the assurance asked that keeps the share wanted, by straight lines between those asked.</summary>
    private static double LogFrames(IEnumerable<Tuning> worlds, double kept)
    {
        var all = worlds.ToArray();
        var points = Asked
            .Select((_, j) => (Kept: all.Average(w => w.Kept[j]), LogFrames: all.Average(w => w.LogFrames[j])))
            .Select(p => (Odds: Math.Log(p.Kept / (1 - p.Kept)), p.LogFrames))
            .ToArray();
        var odds = Math.Log(kept / (1 - kept));
        var after = Array.FindIndex(points, p => p.Odds >= odds);
        if (after <= 0)
        {
            return double.NaN;
        }
        var (low, high) = (points[after - 1], points[after]);
        return low.LogFrames + (odds - low.Odds) / (high.Odds - low.Odds) * (high.LogFrames - low.LogFrames);
    }

    /// <summary>For one world and each assurance asked: the chance of being kept and the logarithm of the frames, averaged over the keepers wanted.</summary>
    private sealed record Tuning(ImmutableArray<double> Kept, ImmutableArray<double> LogFrames)
    {
        internal static Tuning Of(KeeperCurve curve, ShutterSpeed at, Chance chance)
        {
            var law = ShootLaw.For(new(curve, Planning.Usual with { BeyondTested = true }), at.Log2Seconds);
            var budget = Planning.Usual.Budget;
            var plans = Asked
                .Select(a =>
                    Planning.Keepers.Select(k => (k, Frames: FramesQuestion.Smallest(law, k, a, budget, default) ?? budget)).ToArray()
                )
                .ToArray();
            return new(
                [.. plans.Select(p => p.Average(x => chance(x.k, x.Frames, null)))],
                [.. plans.Select(p => p.Average(x => Math.Log(x.Frames)))]
            );
        }
    }
}
