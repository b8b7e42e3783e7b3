using System.Collections.Immutable;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>How often the interval of an exposure contains it.</summary>
internal static class Coverage
{
    internal const long Seed = 20250204;
    internal const int Speeds = 7;

    internal static readonly ImmutableArray<double> Rates = [0.5, 0.9];
    internal static readonly ImmutableArray<double> Slopes = [0.8, 1.6, 3.2];
    internal static readonly ImmutableArray<int> FramesASpeed = [3, 5, 10];

    // Stops from the middle speed to the half-keeper exposure: on a speed, between two, and where few speeds are left beyond it.
    internal static readonly ImmutableArray<double> Halves = [0, 0.5, 1.5];

    private const double Middle = -6;
    private static readonly AnswerOptions s_usual = new() { CheckPriors = false };

    /// <summary>One curve of logits falling by the slope a stop, and how often each rate's exposure lies in its interval.</summary>
    /// <param name="Slope">Logits per stop.</param>
    /// <param name="Half">Stops from the middle speed to the half-keeper exposure.</param>
    /// <param name="Covered">One share a rate.</param>
    internal sealed record Point(double Slope, double Half, ImmutableArray<double> Covered);

    /// <summary>Every table of seven speeds, weighed by its probability: no chance is left but what tables together less likely than <paramref name="leftOut"/> have, and these count as missed.</summary>
    internal static ImmutableArray<Point> Enumerated(
        Estimator estimator,
        int frames,
        IEnumerable<(double Slope, double Half)> curves,
        int threads,
        double leftOut = 1e-12
    )
    {
        int[][] tables = [.. Enumerable.Range(0, (int)Math.Pow(frames + 1, Speeds)).Select(code => Digits(code, frames + 1))];
        var chances = curves.ToDictionary(c => c, c => Chances(c.Slope, c.Half, frames));
        var asked = new bool[tables.Length];
        foreach (var chance in chances.Values)
        {
            var left = 0.0;
            foreach (var (i, p) in tables.Select((table, i) => (i, P: Chance(chance, table))).OrderBy(t => t.P))
                if ((left += p) > leftOut)
                    asked[i] = true;
        }
        var sets = Sets(estimator, frames, tables, asked, threads);
        return
        [
            .. chances.Select(c => new Point(
                c.Key.Slope,
                c.Key.Half,
                [
                    .. Rates.Select(
                        (rate, r) =>
                            tables
                                .Index()
                                .Where(t => sets[t.Index] is { } set && Contains(set[r], Truth(c.Key.Slope, c.Key.Half, rate)))
                                .Sum(t => Chance(c.Value, t.Item))
                    ),
                ]
            )),
        ];
    }

    /// <summary>So many tests of each curve.</summary>
    internal static ImmutableArray<Point> Simulated(
        Estimator estimator,
        int frames,
        IEnumerable<(double Slope, double Half)> curves,
        int tests,
        int threads
    )
    {
        var points = ImmutableArray.CreateBuilder<Point>();
        foreach (var (slope, half) in curves)
        {
            var rates = Enumerable.Range(0, Speeds).Select(i => KeeperRate(slope, half, i)).ToArray();
            int[][] tables =
            [
                .. Enumerable
                    .Range(0, tests)
                    .Select(i =>
                    {
                        var luck = Randomness.Seed.From(Seed).Stream(i);
                        return rates.Select(rate => Enumerable.Range(0, frames).Count(_ => luck.Happens(rate))).ToArray();
                    }),
            ];
            var sets = Sets(estimator, frames, tables, [.. tables.Select(_ => true)], threads);
            points.Add(
                new(
                    slope,
                    half,
                    [.. Rates.Select((rate, r) => sets.Count(set => Contains(set![r], Truth(slope, half, rate))) / (double)tests)]
                )
            );
        }
        return points.ToImmutable();
    }

    /// <summary>The posterior over worlds drawn from its own prior, tested once; the exposure is that of another day.</summary>
    /// <returns>For each rate, whether each world's exposure was in its interval, and how often it should be: 95 %, and a tail more where the interval has no fastest end.</returns>
    internal static ImmutableArray<(bool IsIn, double Claimed)[]> OverThePrior(int first, int worlds, int threads)
    {
        var covered = Rates.Select(_ => new (bool, double)[worlds]).ToImmutableArray();
        Parallel.For(
            0,
            worlds,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                var stream = Randomness.Seed.From(Seed).Stream(first + i);
                var world = World.Draw(KeeperModel.Default, TestDesign.HalfPoint, stream);
                var curve = TestDesign.Model.Fit(world.Shoot(TestDesign.TwoBurstsOfThree.Shoot, stream)).Only;
                var day = world with { HalfPoint = world.HalfPoint + world.SessionLuck * stream.Normal(), SessionLuck = 0 };
                for (var r = 0; r < Rates.Length; r++)
                {
                    var set = curve.ExposureFor(Rates[r], s_usual).Set;
                    covered[r][i] = (Contains(set, ExposureOf(day, Rates[r])), set.Pieces.Any(p => p.Lower is null) ? 0.975 : 0.95);
                }
            }
        );
        return covered;
    }

    // Minus infinity where no speed has the rate.
    private static double ExposureOf(World day, double rate)
    {
        if (rate >= day.Ceiling)
            return double.NegativeInfinity;
        var (fast, slow) = (day.HalfPoint - 60, day.HalfPoint + 60);
        while (slow - fast > 1e-9)
        {
            var middle = (fast + slow) / 2;
            (fast, slow) = day.RateAt(ShutterSpeed.FromLog2Seconds(middle)) >= rate ? (middle, slow) : (fast, middle);
        }
        return fast;
    }

    private static bool Contains(ExposureSet set, double exposure) =>
        (set.Kind == ExposureSetKind.NotReachable && double.IsNegativeInfinity(exposure))
        || set.Pieces.Any(piece => (piece.Lower is not { } low || low <= exposure) && (piece.Upper is not { } high || exposure <= high));

    private static ExposureSet[]?[] Sets(Estimator estimator, int frames, int[][] tables, bool[] asked, int threads)
    {
        var model = KeeperModel.Default with
        {
            Estimator = estimator,
            Luck = estimator == Estimator.Posterior ? LuckKind.Normal : LuckKind.None,
        };
        var sets = new ExposureSet[]?[tables.Length];
        Parallel.For(
            0,
            tables.Length,
            new() { MaxDegreeOfParallelism = threads },
            i =>
            {
                if (!asked[i])
                    return;
                FrameTable table = [.. tables[i].Select((kept, speed) => new FrameCell(At(speed), frames, kept))];
                var curve = model.Fit(table).Only;
                sets[i] = [.. Rates.Select(rate => curve.ExposureFor(rate, s_usual).Set)];
            }
        );
        return sets;
    }

    private static ShutterSpeed At(int speed) => ShutterSpeed.FromLog2Seconds(Middle + speed - Speeds / 2);

    private static double Truth(double slope, double half, double rate) => Middle + half - Math.Log(rate / (1 - rate)) / slope;

    private static double KeeperRate(double slope, double half, int speed) => 1 / (1 + Math.Exp(slope * (speed - Speeds / 2 - half)));

    // P(k keepers of the frames) at each speed.
    private static double[][] Chances(double slope, double half, int frames) =>
        [
            .. Enumerable
                .Range(0, Speeds)
                .Select(speed =>
                {
                    var rate = KeeperRate(slope, half, speed);
                    var choose = 1.0;
                    return Enumerable
                        .Range(0, frames + 1)
                        .Select(k =>
                        {
                            var chance = choose * Math.Pow(rate, k) * Math.Pow(1 - rate, frames - k);
                            choose *= (frames - k) / (k + 1.0);
                            return chance;
                        })
                        .ToArray();
                }),
        ];

    private static double Chance(double[][] chances, int[] table) =>
        chances.Zip(table, (chance, kept) => chance[kept]).Aggregate((a, b) => a * b);

    private static int[] Digits(int code, int radix) =>
        [.. Enumerable.Range(0, Speeds).Select(i => code / (int)Math.Pow(radix, i) % radix)];
}
