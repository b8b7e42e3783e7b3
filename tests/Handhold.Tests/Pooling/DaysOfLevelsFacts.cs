using Handhold.Kernels;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Pooling;

/// <summary>The luck of days where photographers vary.</summary>
public class DaysOfLevelsFacts
{
    private const int Frames = 10;
    private const int Seeds = 6;
    private const double PhotographersVary = 0.6;

    /// <summary>Steepness known, no ceiling, hardly any luck of bursts: what is left is photographers and days.</summary>
    private static readonly KeeperModel s_alone = KeeperModel.Default with
    {
        Each = [],
        Ceiling = Ceiling.One,
        Priors = Priors.Default with { HalfPoint = new(-5, 1.5), Steepness = new(1.6, 0.001), BurstLuck = new(0.001) },
    };

    private static readonly int[] s_speeds = [125, 60, 30, 15, 8];

    private static readonly (string Photographer, string Session, int[] Keepers)[] s_days =
    [
        ("ada", "1", [10, 9, 7, 2, 0]),
        ("ada", "2", [10, 6, 2, 0, 0]),
        ("bo", "1", [10, 10, 9, 6, 1]),
    ];

    [Fact]
    public void The_luck_of_days_is_that_of_a_brute_sum_over_half_points_photographers_lucks_and_their_spreads()
    {
        var days = Together(PhotographersVary).Fit(Table(s_days)).Only.Days().Days;
        var expected = BruteSum();
        Assert.Equal([("ada", "1"), ("ada", "2"), ("bo", "1")], days.Select(d => (d.Photographer, d.Session)));
        for (var d = 0; d < days.Length; d++)
        {
            var (mean, sd) = expected[d];
            Assert.InRange(days[d].Stops.Value, mean - 0.12 * sd, mean + 0.12 * sd); // a median beside a mean
            Assert.InRange((days[d].Interval.Upper - days[d].Interval.Lower) / (2 * 1.96 * sd), 0.9, 1.1);
        }

        Assert.Equal((50, 28), (days[0].Frames, days[0].Keepers));
    }

    [Fact]
    public void Photographers_who_hardly_vary_leave_luck_and_trend_as_they_are_without()
    {
        var table = Table([.. Enumerable.Range(1, 4).Select(i => ("ada", FormattableString.Invariant($"{i}"), Kept(-5.6 + 0.35 * i)))]);
        var (alone, together) = (Answers(s_alone), Answers(Together(1e-5)));
        Assert.Equal(alone[0].Statuses.Length, together[0].Statuses.Length);
        for (var day = 0; day < alone[0].Days.Length; day++)
            AssertNear(a => (a.Days[day].Stops.Value, a.Days[day].Interval));
        AssertNear(a => (a.Trend!.Stops.Value, a.Trend.Interval));
        Assert.Equal(alone.Average(a => a.Trend!.ProbabilityBetter), together.Average(a => a.Trend!.ProbabilityBetter), 0.01);

        // Ends of samples scatter, a trend's by 0.05 of its width: they are averaged over seeds.
        DaysAnswer[] Answers(KeeperModel model) =>
            [.. Enumerable.Range(1, Seeds).Select(seed => (model with { Seed = seed }).Fit(table).Only.Days())];

        void AssertNear(Func<DaysAnswer, (double Median, CredibleInterval Interval)> number)
        {
            var width = alone.Average(a => number(a).Interval.Upper - number(a).Interval.Lower);
            Assert.Equal(0, Change(n => n.Median) / width, 0.02);
            Assert.Equal(0, Change(n => n.Interval.Lower) / width, 0.06);
            Assert.Equal(0, Change(n => n.Interval.Upper) / width, 0.06);

            double Change(Func<(double Median, CredibleInterval Interval), double> of) =>
                together.Average(a => of(number(a))) - alone.Average(a => of(number(a)));
        }
    }

    [Fact]
    public void The_progress_of_photographers_who_differ_is_told_as_one_for_all()
    {
        var table = Table([
            .. from photographer in new[] { "ada", "bo", "cy" }
            from day in Enumerable.Range(0, 4)
            select (photographer, FormattableString.Invariant($"day {day}"), Kept(-6 + 0.4 * (photographer[0] - 'a') + 0.45 * day)),
        ]);
        var answer = Together(PhotographersVary).Fit(table).Only.Days();
        Assert.Equal(12, answer.Days.Length);
        Assert.True(answer.Trend!.IsTold);
        Assert.InRange(answer.Trend.Stops.Value, 0.9, 1.6); // 1.35, drawn a little towards none
        Assert.Contains("one change for all photographers", answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Levels_without_luck_have_no_days() =>
        Assert.Throws<ArgumentException>(() => (Together(PhotographersVary) with { Luck = LuckKind.None }).Fit(Table(s_days)).Only.Days());

    private static KeeperModel Together(double spread) =>
        s_alone with
        {
            Varies = [new("photographer")],
            Priors = s_alone.Priors with { Spreads = new() { PhotographerTau = new(spread) } },
        };

    private static FrameTable Table((string Photographer, string Session, int[] Keepers)[] days) =>
        [
            .. days.SelectMany(day =>
                day.Keepers.Select(
                    (k, i) =>
                        new FrameCell(OneOver(s_speeds[i]), Frames, k)
                        {
                            Conditions = new() { Photographer = day.Photographer, Session = day.Session },
                        }
                )
            ),
        ];

    private static int[] Kept(double halfPoint) =>
        [.. s_speeds.Select(s => (int)Math.Round(Frames * Elementary.Logistic(1.6 * (halfPoint - OneOver(s).Log2Seconds)).Mu))];

    /// <summary>Mean and sd of every day's luck: sums over both spreads, the half point, each photographer's shift and each day's luck on one grid.</summary>
    private static (double Mean, double Sd)[] BruteSum()
    {
        const double Step = 0.1;
        double[] halves = [.. Enumerable.Range(-80, 161).Select(i => -5 + i * Step)];
        int[] moves = [.. Enumerable.Range(-30, 61)];
        double[][] likelihoods = [.. s_days.Select(d => halves.Select(h => Math.Exp(Log(d.Keepers, h) + 20)).ToArray())];
        var total = 0.0;
        var (first, second) = (new double[s_days.Length], new double[s_days.Length]);
        for (var luck = 0.025; luck < 1.6; luck += 0.05)
        {
            var normal = Cells(luck);
            // Of each day, at each half point of its photographer: the likelihood with luck summed out, times luck, times its square.
            var sums = likelihoods.Select(l => halves.Select((_, h) => Sum(l, normal, h)).ToArray()).ToArray();
            for (var spread = 0.025; spread < 2.6; spread += 0.05)
            {
                var shifts = Cells(spread);
                var prior = Math.Exp(-0.5 * (Math.Pow(luck / 0.35, 2) + Math.Pow(spread / PhotographersVary, 2)));
                for (var h = 0; h < halves.Length; h++)
                {
                    var weight = prior * Math.Exp(-0.5 * Math.Pow((halves[h] + 5) / 1.5, 2));
                    var (ada, bo) = (new double[5], new double[3]);
                    for (var m = 0; m < moves.Length; m++)
                    {
                        var at = h + moves[m];
                        if (at < 0 || at >= halves.Length)
                            continue;
                        var (a, b, c) = (sums[0][at], sums[1][at], sums[2][at]);
                        Add(
                            ada,
                            shifts[m],
                            a.Zeroth * b.Zeroth,
                            a.First * b.Zeroth,
                            a.Second * b.Zeroth,
                            a.Zeroth * b.First,
                            a.Zeroth * b.Second
                        );
                        Add(bo, shifts[m], c.Zeroth, c.First, c.Second);
                    }

                    total += weight * ada[0] * bo[0];
                    Add(first, weight, ada[1] * bo[0], ada[3] * bo[0], ada[0] * bo[1]);
                    Add(second, weight, ada[2] * bo[0], ada[4] * bo[0], ada[0] * bo[2]);
                }
            }
        }

        return [.. first.Zip(second, (f, s) => (f / total, Math.Sqrt(s / total - f / total * (f / total))))];

        // Cells of a normal law, so that narrow ones add up to one as well.
        double[] Cells(double sd) => [.. moves.Select(m => Normal.Cdf((m + 0.5) * Step / sd) - Normal.Cdf((m - 0.5) * Step / sd))];

        (double Zeroth, double First, double Second) Sum(double[] likelihood, double[] normal, int h)
        {
            var sums = new double[3];
            for (var m = 0; m < moves.Length; m++)
                if (h + moves[m] is var at && at >= 0 && at < halves.Length)
                {
                    var (l, u) = (normal[m] * likelihood[at], moves[m] * Step);
                    Add(sums, l, 1, u, u * u);
                }

            return (sums[0], sums[1], sums[2]);
        }

        static void Add(double[] sums, double weight, params ReadOnlySpan<double> values)
        {
            for (var i = 0; i < values.Length; i++)
                sums[i] += weight * values[i];
        }

        static double Log(int[] keepers, double half) =>
            keepers
                .Select(
                    (k, i) =>
                    {
                        var (mu, rest) = Elementary.Logistic(1.6 * (half - OneOver(s_speeds[i]).Log2Seconds));
                        return k * Math.Log(mu) + (Frames - k) * Math.Log(rest);
                    }
                )
                .Sum();
    }
}
