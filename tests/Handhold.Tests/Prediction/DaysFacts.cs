using Handhold.Kernels;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Prediction;

public class DaysFacts
{
    /// <summary>Steepness known, no ceiling, hardly any luck of bursts: what is left is days.</summary>
    private static readonly KeeperModel s_plain = KeeperModel.Default with
    {
        Ceiling = Ceiling.One,
        Priors = Priors.Default with { HalfPoint = new(-5, 1.5), Steepness = new(1.6, 0.001), BurstLuck = new(0.001) },
    };

    private static readonly int[] s_speeds = [125, 60, 30, 15, 8];

    private static FrameCell[] Day(string day, params int[] keepers) =>
        [.. keepers.Select((k, i) => new FrameCell(OneOver(s_speeds[i]), 10, k) { Conditions = Conditions.None with { Session = day } })];

    /// <summary>A day whose half point is known, of so many frames at each speed.</summary>
    private static FrameCell[] Known(string day, double halfPoint, int frames = 12) =>
        [
            .. s_speeds.Select(s => new FrameCell(
                OneOver(s),
                frames,
                (int)Math.Round(frames * new CurveShape { HalfPoint = halfPoint, Steepness = 1.6 }.RateAt(OneOver(s).Log2Seconds))
            )
            {
                Conditions = Conditions.None with { Session = day },
            }),
        ];

    [Fact]
    public void The_luck_of_days_is_that_of_a_brute_sum_over_half_point_lucks_and_their_spread()
    {
        int[][] kept =
        [
            [10, 9, 7, 2, 0],
            [10, 6, 2, 0, 0],
        ];
        var found = s_plain.Fit([.. Day("mon", kept[0]), .. Day("tue", kept[1])]).Only.Days().Days;
        var (total, first, second) = (0.0, new double[2], new double[2]);
        double[] lucks = [.. Enumerable.Range(-40, 81).Select(i => i * 0.05)];
        double[] taus = [.. Enumerable.Range(-45, 91).Select(i => -4.6 + i * 0.06)];
        var logs = kept.Select(k => taus.Select(t => lucks.Select(u => Log(k, t + u)).ToArray()).ToArray()).ToArray();
        for (var spread = 0.02; spread < 1.8; spread += 0.04)
        for (var t = 0; t < taus.Length; t++)
        {
            var prior = Math.Exp(-0.5 * (spread / 0.35 * (spread / 0.35) + (taus[t] + 5) * (taus[t] + 5) / 2.25));
            double[][] days =
            [
                .. logs.Select(l => lucks.Select((u, i) => Math.Exp(l[t][i] + 60 - 0.5 * u * u / (spread * spread)) / spread).ToArray()),
            ];
            var (a, b) = (days[0].Sum(), days[1].Sum());
            total += prior * a * b;
            for (var i = 0; i < lucks.Length; i++)
            {
                first[0] += prior * days[0][i] * lucks[i] * b;
                first[1] += prior * days[1][i] * lucks[i] * a;
                second[0] += prior * days[0][i] * lucks[i] * lucks[i] * b;
                second[1] += prior * days[1][i] * lucks[i] * lucks[i] * a;
            }
        }

        for (var d = 0; d < 2; d++)
        {
            var mean = first[d] / total;
            var sd = Math.Sqrt(second[d] / total - mean * mean);
            Assert.InRange(found[d].Stops.Value, mean - 0.12 * sd, mean + 0.12 * sd); // a median beside a mean
            Assert.InRange((found[d].Interval.Upper - found[d].Interval.Lower) / (2 * 1.96 * sd), 0.9, 1.1);
        }

        Assert.True(found[0].Stops.Value > 0 && found[1].Stops.Value < 0);
        Assert.Equal((50, 28), (found[0].Frames, found[0].Keepers));

        static double Log(int[] keepers, double half) =>
            keepers
                .Select(
                    (k, i) =>
                    {
                        var (mu, rest) = Elementary.Logistic(1.6 * (half - OneOver(s_speeds[i]).Log2Seconds));
                        return k * Math.Log(mu) + (10 - k) * Math.Log(rest);
                    }
                )
                .Sum();
    }

    [Fact]
    public void Points_say_of_one_tested_day_what_quadrature_says()
    {
        var curve = KeeperModel.Default.Fit([.. Day("mon", 10, 9, 7, 2, 0)]).Only;
        var (points, exact) = (curve.TestedDays!.Value.On(0, Conditions.None), curve.Posterior.SameDay!);
        foreach (var speed in s_speeds)
        {
            var x = OneOver(speed).Log2Seconds;
            Assert.InRange(points.MeanRate(x) - exact.MeanRate(x), -0.005, 0.005);
            Assert.InRange(points.RateQuantile(x, 0.05) - exact.RateQuantile(x, 0.05), -0.02, 0.02);
        }
    }

    [Fact]
    public void What_today_has_shown_enters_what_is_said_of_today()
    {
        var curve = KeeperModel
            .Default.Fit([.. Day("1 good", 10, 10, 9, 6, 2), .. Day("2 good", 10, 10, 9, 5, 1), .. Day("3 bad", 10, 5, 1, 0, 0)])
            .Only;
        RateAnswer At(string? day) =>
            curve.RateAt(
                OneOver(30),
                new()
                {
                    Day = day is null ? Handhold.Day.Another : Handhold.Day.Same,
                    Conditions = Conditions.None with { Session = day },
                    CheckPriors = false,
                }
            );
        var (good, another, bad) = (At("1 good").Rate!, At(null).Rate!, At("3 bad").Rate!);
        Assert.True(bad.Mean < another.Mean - 0.1 && another.Mean < good.Mean - 0.05, $"{bad.Mean} {another.Mean} {good.Mean}");
        Assert.True(good.Interval.Upper - good.Interval.Lower < another.Interval.Upper - another.Interval.Lower);
    }

    [Fact]
    public void Today_must_be_named_where_there_were_several_days_and_be_one_of_them()
    {
        var curve = s_plain.Fit([.. Day("mon", 10, 9, 7, 2, 0), .. Day("tue", 10, 6, 2, 0, 0)]).Only;
        var unnamed = Assert.Throws<ConditionsException>(() => curve.RateAt(OneOver(30), new() { Day = Handhold.Day.Same }));
        Assert.Contains("mon or tue", unnamed.Message, StringComparison.Ordinal);
        Assert.Throws<ConditionsException>(() =>
            curve.RateAt(OneOver(30), new() { Day = Handhold.Day.Same, Conditions = Conditions.None with { Session = "wed" } })
        );
    }

    [Theory]
    [InlineData(0.7, 12, false)]
    [InlineData(1.3, 12, false)]
    [InlineData(1.0, 100, false)]
    [InlineData(0.7, 4000, false)]
    [InlineData(3.0, 12, true)]
    public void Two_lone_days_tell_no_change_below_1_4_stops_and_of_any_length_none_of_one(double change, int frames, bool told)
    {
        var trend = s_plain.Fit([.. Known("2026-01-01", -5.5, frames), .. Known("2026-02-01", -5.5 + change, frames)]).Only.Days().Trend!;
        Assert.Equal(told, trend.IsTold);
        Assert.InRange(trend.Stops.Value, 0.5 * change, 1.1 * change);
        Assert.True(trend.ProbabilityBetter > 0.75);
    }

    [Fact]
    public void The_change_between_two_days_is_known_as_well_as_luck_and_frames_let_it()
    {
        // 60 frames fix a day's half point within 0.23 stops; days differ by 0.43: 1.96 √(2 (0.43² + 0.23²)) = 1.35 stops.
        var trend = s_plain.Fit([.. Known("2026-01-01", -5), .. Known("2026-02-01", -5)]).Only.Days().Trend!;
        Assert.InRange((trend.Interval.Upper - trend.Interval.Lower) / 2, 0.8 * 1.35, 1.2 * 1.35);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Several_days_tell_a_change_that_two_do_not(int days)
    {
        double[] luck = [0.1, -0.15, 0.05, -0.05, 0.12, -0.07];
        FrameTable table = [.. Enumerable.Range(0, days).SelectMany(i => Known($"day {i}", -5.5 + luck[i] + 1.35 * i / (days - 1)))];
        var trend = s_plain.Fit(table).Only.Days().Trend!;
        Assert.True(trend.IsTold, $"{trend.Stops} {trend.Interval.Lower} {trend.Interval.Upper}");
        Assert.InRange(trend.Stops.Value, 0.9, 1.7);
        Assert.Equal(("day 0", $"day {days - 1}"), (trend.First, trend.Last));
    }

    [Fact]
    public void One_day_shows_no_trend_and_a_curve_without_luck_no_days()
    {
        Assert.Null(s_plain.Fit([.. Day("mon", 10, 9, 7, 2, 0)]).Only.Days().Trend);
        Assert.Throws<ArgumentException>(() => (s_plain with { Luck = LuckKind.None }).Fit([.. Day("mon", 10, 9, 7, 2, 0)]).Only.Days());
    }
}
