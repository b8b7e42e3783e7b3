using System.Text.Json;
using Handhold.Randomness;

namespace Handhold.Tests.Models;

public class JudgedTwiceFacts
{
    /// <summary>golden/judged-twice: Gauss-Legendre product sums of the model of Hui and Walter (1980) with equal tests.</summary>
    [Fact]
    public void Means_and_intervals_are_those_of_product_sums()
    {
        using var golden = JsonDocument.Parse(File.ReadAllBytes(GoldenFolder.PathOf("judged-twice", "expected.json")));
        foreach (var row in golden.RootElement.EnumerateArray())
        {
            var speeds = row.GetProperty("speeds").EnumerateArray().Select(s => s.EnumerateArray().Select(n => n.GetInt32()).ToArray());
            FrameTable table = [.. speeds.Select((n, i) => Cell(i, new(n[0], n[1], n[2])))];
            var found = JudgedTwice.Of(table)!;
            Agree(row.GetProperty("sensitivity"), found.Judging.Sensitivity, found.Sensitivity);
            Agree(row.GetProperty("specificity"), found.Judging.Specificity, found.Specificity);
            Assert.Equal(table.Sum(c => c.SecondLooks.Frames), found.Judging.FramesJudgedTwice);
        }

        static void Agree(JsonElement expected, double mean, Interval interval)
        {
            double[] numbers = [.. expected.EnumerateArray().Select(n => n.GetDouble())];
            Assert.Equal(numbers[0], mean, 5e-4);
            Assert.Equal(numbers[1], interval.Lower, 5e-4);
            Assert.Equal(numbers[2], interval.Upper, 5e-4);
        }
    }

    /// <summary>Judges and rates from the prior: 90 % intervals contain 90 % of the judges, within four Monte Carlo errors of 200.</summary>
    [Fact]
    public void Intervals_contain_judges_drawn_from_the_prior_as_often_as_they_say()
    {
        var (sensitive, specific) = (0, 0);
        for (var world = 0; world < 200; world++)
        {
            var stream = Seed.From(20250207).Stream(world);
            var (sensitivity, specificity) = (Skill(stream), Skill(stream));
            FrameTable table = [.. Enumerable.Range(0, 4).Select(i => Cell(i, Looks(stream, sensitivity, specificity)))];
            var found = JudgedTwice.Of(table, 0.9)!;
            sensitive += Contains(found.Sensitivity, sensitivity);
            specific += Contains(found.Specificity, specificity);
        }

        Assert.InRange(sensitive, 180 - 17, 180 + 17);
        Assert.InRange(specific, 180 - 17, 180 + 17);

        static int Contains(Interval interval, double value) => value >= interval.Lower && value <= interval.Upper ? 1 : 0;
    }

    [Fact]
    public void Frames_judged_once_tell_nothing_of_the_judge() => Assert.Null(JudgedTwice.Of([new(ShutterSpeed.OneOver(60), 6, 3)]));

    [Fact]
    public void Frames_are_counted_by_both_verdicts_and_a_second_without_a_first_is_refused()
    {
        ShotFrame Frame(Verdict first, Verdict second) => new(ShutterSpeed.OneOver(60), first) { SecondVerdict = second };
        var table = FrameTable.FromFrames([
            Frame(Verdict.Keeper, Verdict.Keeper),
            Frame(Verdict.Keeper, Verdict.Reject),
            Frame(Verdict.Reject, Verdict.Keeper),
            Frame(Verdict.Reject, Verdict.Reject),
            Frame(Verdict.Reject, Verdict.NotJudged),
        ]);
        Assert.Equal(new SecondLooks(1, 2, 1), table.Select(c => c.SecondLooks).Aggregate(SecondLooks.Add));
        var refused = Assert.Throws<CellException>(() => FrameTable.FromFrames([Frame(Verdict.NotJudged, Verdict.Keeper)]));
        Assert.Contains("second verdict", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4, 0, 0)]
    [InlineData(0, 0, 4)]
    [InlineData(3, 3, 3)]
    [InlineData(-1, 0, 0)]
    public void Looks_that_contradict_the_counts_are_refused(int twice, int once, int never) =>
        Assert.Throws<CellException>(() => new FrameCell(ShutterSpeed.OneOver(60), 6, 3) { SecondLooks = new(twice, once, never) });

    private static FrameCell Cell(int speed, SecondLooks looks) =>
        new(ShutterSpeed.OneOver(250 >> speed), looks.Frames, looks.KeptTwice + looks.KeptOnce) { SecondLooks = looks };

    /// <summary>Beta(9, 1), above one half.</summary>
    private static double Skill(RandomStream stream)
    {
        while (true)
            if (stream.Beta(9, 1) is > 0.5 and var skill)
                return skill;
    }

    private static SecondLooks Looks(RandomStream stream, double sensitivity, double specificity)
    {
        var (rate, looks) = (stream.Uniform(), default(SecondLooks));
        for (var i = 0; i < 12; i++)
        {
            var called = stream.Happens(rate) ? sensitivity : 1 - specificity;
            looks += SecondLooks.Of(Verdict(), Verdict());

            Verdict Verdict() => stream.Happens(called) ? Handhold.Verdict.Keeper : Handhold.Verdict.Reject;
        }

        return looks;
    }
}
