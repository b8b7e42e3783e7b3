using FsCheck.Xunit;
using Handhold.Randomness;

namespace Handhold.Laws.Tests;

public class PosteriorProperties
{
    private static readonly AnswerOptions Quick = new() { CheckPriors = false, Budget = 50 };

    // The full form, 5000 tables, is part of laws/Handhold.Laws.
    [Fact]
    public void Every_table_gets_numbers() => Assert.Empty(AnyTable.Faults(tables: 20, threads: 2));

    [Property(MaxTest = 5, Replay = "(20250131,3)")]
    public void Row_order_changes_no_bit(long seed)
    {
        var stream = Seed.From(seed).Stream(0);
        var table = RandomTables.Draw(stream);
        Assert.Equal(Numbers(table), Numbers(RandomTables.Shuffle(table, stream)));
    }

    [Property(MaxTest = 5, Replay = "(20250131,5)")]
    public void Pooling_frames_into_cells_changes_no_answer(long seed)
    {
        var table = RandomTables.Draw(Seed.From(seed).Stream(0));
        Assert.Equal(Numbers(table), Numbers(RandomTables.Unpool(table)), (a, b) => Near(a, b, 1e-10));
    }

    [Property(MaxTest = 5, Replay = "(20250131,7)")]
    public void Shifting_all_exposures_and_the_prior_shifts_the_answers(long seed)
    {
        var stream = Seed.From(seed).Stream(0);
        var table = RandomTables.Draw(stream);
        var stops = 10 * stream.Uniform() - 5;
        var here = Fit(table, half: -6);
        var there = Fit(RandomTables.Shift(table, stops), half: -6 + stops);
        var (a, b) = (Tau(here), Tau(there));
        Assert.Equal(a.Median + stops, b.Median, 1e-8);
        Assert.Equal(a.Interval.Lower + stops, b.Interval.Lower, 1e-8);
        Assert.Equal(a.Interval.Upper + stops, b.Interval.Upper, 1e-8);
        var at = here.Data.Speeds[0].Exposure;
        Assert.Equal(
            here.RateAt(at, Quick).Rate!.Mean,
            there.RateAt(ShutterSpeed.FromLog2Seconds(at.Log2Seconds + stops), Quick).Rate!.Mean,
            1e-8
        );

        static KeeperCurve Fit(FrameTable table, double half) =>
            (KeeperModel.Default with { Priors = Priors.Default with { HalfPoint = new(half, 3) } }).Fit(table).Only;
        static ParameterSummary Tau(KeeperCurve curve) => curve.Parameters.Single(p => p.Name == "tau0");
    }

    [Property(MaxTest = 6, Replay = "(20250131,9)")]
    public void One_frame_more_never_lowers_the_chance_of_keepers(long seed)
    {
        var curve = KeeperModel.Default.Fit(RandomTables.Draw(Seed.From(seed).Stream(0))).Only;
        var at = curve.Data.Slowest;
        foreach (var layout in new int?[] { null, 3 })
        {
            AnswerOptions options = new() { BurstsOf = layout };
            var before = AtLeast(1);
            for (var frames = 2; frames <= 12; frames++)
            {
                var after = AtLeast(frames);
                for (var k = 0; k < before.Length; k++)
                {
                    Assert.True(after[k] >= before[k] - 1e-12);
                }
                before = after;
            }

            // P(at least 0), P(at least 1), ...
            double[] AtLeast(int frames)
            {
                var counts = curve.KeepersToExpect(at, frames, options).Probabilities;
                return [.. Enumerable.Range(0, frames + 1).Select(k => counts.Skip(k).Sum())];
            }
        }
    }

    [Fact]
    public void Fits_at_the_same_time_equal_fits_one_by_one()
    {
        var tables = Enumerable.Range(0, 4).Select(i => RandomTables.Draw(Seed.From(64).Stream(i))).ToArray();
        var together = new double[tables.Length][];
        Parallel.For(0, tables.Length, new() { MaxDegreeOfParallelism = 16 }, i => together[i] = Numbers(tables[i]));
        Assert.Equal(tables.Select(Numbers), together);
    }

    // Everything that a fit and its answers say in numbers.
    private static double[] Numbers(FrameTable table)
    {
        var curve = KeeperModel.Default.Fit(table).Only;
        var at = curve.Data.Speeds[curve.Data.Speeds.Length / 2].Exposure;
        var rate = curve.RateAt(at, Quick).Rate!;
        var frames = curve.FramesNeeded(at, 1, 0.8, Quick);
        return
        [
            .. curve.Parameters.SelectMany(p => new[] { p.Median, p.Mean, p.StandardDeviation, p.Interval.Lower, p.Interval.Upper }),
            curve.LogLikelihood,
            curve.Deviance,
            rate.Mean,
            rate.Median,
            rate.Interval.Lower,
            rate.Interval.Upper,
            frames.Frames ?? -1,
            frames.Assurance,
        ];
    }

    private static bool Near(double a, double b, double tolerance) => Math.Abs(a - b) <= tolerance * Math.Max(1, Math.Abs(a));
}
