using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Solvers;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Luck;

public class BurstPredictionFacts
{
    /// <summary>Invented: two bursts a speed, or all frames of a speed alike.</summary>
    private static FrameTable Table(params int[][] keepers) =>
        [
            .. keepers.SelectMany(
                (bursts, speed) =>
                    bursts.Select(
                        (kept, i) =>
                            new FrameCell(OneOver(new[] { 60, 30, 15, 8, 4 }[speed]), 5, kept)
                            {
                                Conditions = Conditions.None with { Burst = FormattableString.Invariant($"{speed}.{i}") },
                            }
                    )
            ),
        ];

    private static readonly FrameTable s_table = Table([5, 4], [5, 2], [4, 0], [2, 0], [0, 0]);

    private static KeeperCurve Fit(LuckKind luck, Link link = Link.Logit) =>
        (KeeperModel.Default with { Estimator = Estimator.Likelihood, Luck = luck, Link = link }).Fit(s_table).Only;

    [Fact]
    public void Averaged_over_normal_luck_the_probit_curve_is_a_flatter_probit()
    {
        foreach (var sd in new[] { 0, 0.3, 1, 4 })
        foreach (var eta in new[] { -6, -1.3, 0, 0.4, 3 })
        {
            var flatter = Math.Sqrt(1 + sd * sd);
            Assert.Equal(1, AveragedLink.At(Link.Probit, eta, sd).F / Normal.Cdf(eta / flatter), 1e-10);
            var (height, slope, bend) = AveragedLink.Height(Link.Probit, Normal.Cdf(eta / flatter), sd);
            Assert.Equal(eta, height, 1e-8);
            Assert.Equal(eta / flatter * sd / flatter, slope, 1e-8);
            Assert.Equal(eta / flatter / (flatter * flatter * flatter), bend, 1e-7);
        }
    }

    [Fact]
    public void One_keeper_of_a_burst_takes_twice_the_frames_that_independence_promises()
    {
        // A rate of 0.23 and luck of one logit: 18 frames in one hold; counted as independent 9.
        var predictor = AveragedLink.Height(Link.Logit, 0.23, 1).Eta;
        var burst = BurstRates.OfNormalLuck(Link.Logit, predictor, 1, 1, 0);
        Assert.Equal(18, Enumerable.Range(1, 100).First(n => burst.AtLeast(1, n) >= 0.9));
        BurstRates independent = new([0.23], [0.77], [1]);
        Assert.Equal(9, Enumerable.Range(1, 100).First(n => independent.AtLeast(1, n) >= 0.9));
    }

    [Fact]
    public void The_rate_answered_is_that_of_a_frame_of_whatever_luck()
    {
        var curve = Fit(LuckKind.Normal);
        var linear = curve.Linear!;
        var (a, b, sd) = (linear.Coefficients[0].Estimate!.Value, linear.Coefficients[1].Estimate!.Value, linear.Luck!.Estimate!.Value);
        var rate = curve.RateAt(OneOver(8)).Rate!;
        Assert.Equal(AveragedLink.At(Link.Logit, a + b * OneOver(8).Log2Seconds, sd).F, rate.Mean, 1e-10);
        Assert.InRange(rate.Mean, rate.Interval.Lower, rate.Interval.Upper);
        // At a half the averaged curve is where the curve is.
        Assert.Equal(-a / b, curve.HalfKeeperExposure().Exposure!.Value.Log2Seconds, 1e-9);
        Assert.Equal(rate.Mean, curve.KeepersToExpect(OneOver(8), 1).Probabilities[1], 1e-9);
    }

    [Fact]
    public void An_end_of_a_rate_s_interval_is_where_the_likelihood_with_its_luck_adapting_has_lost_enough()
    {
        // The probit's averaged curve is a probit of slopes b / √(1 + s²): an interval of that contrast, found by scanning the luck.
        var curve = Fit(LuckKind.Normal, Link.Probit);
        var upper = curve.RateAt(OneOver(15)).Rate!.Interval.Upper;
        var likelihood = curve.Linear!.Likelihood;
        var best = Enumerable
            .Range(0, 80)
            .Select(i => i * 0.05)
            .Max(sd =>
            {
                ClusteredLikelihood all = new(
                    likelihood.Shared!.Problem,
                    likelihood.Shared.Design,
                    likelihood.Shared.Law(likelihood.Shared.Nodes),
                    [1, OneOver(15).Log2Seconds]
                );
                ClusteredClimb climb = new(all, _ => (Normal.Quantile(upper) * Math.Sqrt(1 + sd * sd), 0, 0), true);
                climb.Theta[^1] = sd;
                climb.Climb();
                return climb.LogLikelihood;
            });
        Assert.Equal(0.5 * 1.959963984540054 * 1.959963984540054, curve.LogLikelihood - best, 3e-3);
    }

    [Theory]
    [InlineData(LuckKind.Normal)]
    [InlineData(LuckKind.BetaBinomial)]
    public void Keepers_of_several_bursts_are_those_of_every_way_they_can_fall(LuckKind luck)
    {
        var curve = Fit(luck);
        var (at, options) = (OneOver(15), AnswerOptions.Default with { BurstsOf = 3 });
        double[] one = [.. Enumerable.Range(0, 4).Select(j => curve.KeepersToExpect(at, 3).Probabilities[j])];
        double[] two = [.. Enumerable.Range(0, 3).Select(j => curve.KeepersToExpect(at, 2).Probabilities[j])];
        var expected = new double[9];
        for (var i = 0; i < 4; i++)
        for (var j = 0; j < 4; j++)
        for (var k = 0; k < 3; k++)
            expected[i + j + k] += one[i] * one[j] * two[k];
        var counts = curve.KeepersToExpect(at, 8, options).Probabilities;
        for (var k = 0; k < 9; k++)
            Assert.Equal(expected[k], counts[k], 1e-12);
        var answer = curve.FramesNeeded(at, 2, 0.9, options);
        Assert.True(1 - Below(answer.Frames!.Value) >= 0.9 && 1 - Below(answer.Frames.Value - 1) < 0.9);

        double Below(int frames) => curve.KeepersToExpect(at, frames, options).Probabilities.Take(2).Sum();
    }

    [Fact]
    public void A_beta_binomial_burst_is_drawn_like_balls_from_an_urn()
    {
        // Each keeper adds a ball of its colour: the chance of the next is (a + kept) / (a + b + drawn).
        var curve = Fit(LuckKind.BetaBinomial);
        var (rate, rho) = (curve.RateAt(OneOver(15)).Rate!.Mean, curve.Linear!.Luck!.Estimate!.Value);
        var (a, b) = (rate * (1 - rho) / rho, (1 - rate) * (1 - rho) / rho);
        var expected = new double[6];
        for (var way = 0; way < 32; way++)
        {
            var (chance, kept) = (1.0, 0);
            for (var drawn = 0; drawn < 5; drawn++)
            {
                var keeper = (way >> drawn & 1) == 1;
                chance *= (keeper ? a + kept : b + drawn - kept) / (a + b + drawn);
                kept += keeper ? 1 : 0;
            }

            expected[kept] += chance;
        }

        var counts = curve.KeepersToExpect(OneOver(15), 5).Probabilities;
        for (var k = 0; k < 6; k++)
            Assert.Equal(expected[k], counts[k], 1e-12);
    }

    [Fact]
    public void Fresh_grips_do_with_fewer_frames_what_one_hold_does()
    {
        var answer = Fit(LuckKind.Normal).FramesNeeded(OneOver(8), 1, 0.9);
        Assert.NotNull(answer.BestSplit);
        Assert.True(answer.BestSplit.Frames < answer.Frames && answer.BestSplit.Assurance >= 0.9);
    }

    [Fact]
    public void Bursts_that_kept_or_lost_all_of_their_frames_have_a_correlation_of_one_or_are_refused()
    {
        var alike = Table([5, 5, 0], [5, 5], [5, 0], [5, 0, 0], [0, 0, 5]);
        var model = KeeperModel.Default with { Estimator = Estimator.Likelihood };
        var curve = (model with { Luck = LuckKind.BetaBinomial }).Fit(alike).Only;
        Assert.Equal(1, curve.Linear!.Luck!.Estimate);
        Assert.Equal(1, curve.Linear.Luck.Interval.Upper);
        Assert.Contains(curve.Statuses, s => s.Code == StatusCode.BurstsAllAlike);
        // A burst counts as one frame.
        var single = model.Fit([.. alike.Select(c => new FrameCell(c.Exposure, 1, c.Keepers / 5))]).Only;
        Assert.Equal(single.Linear!.Coefficients[1].Estimate!.Value, curve.Linear.Coefficients[1].Estimate!.Value, 1e-5);
        Assert.Contains(
            "--luck beta-binomial",
            Assert.Throws<CellException>(() => (model with { Luck = LuckKind.Normal }).Fit(alike)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Bursts_far_apart_within_a_speed_are_no_misfit_of_the_curve()
    {
        // One bad grip at a fast speed: alarming among independent frames, not among bursts that share luck.
        var table = Table([5, 5, 5, 0], [5, 0, 5, 5], [5, 3, 0, 5], [0, 5, 1, 0], [0, 0, 4, 0]);
        var model = KeeperModel.Default with { Estimator = Estimator.Likelihood };
        var (alone, shared) = (model.Fit(table).Only, (model with { Luck = LuckKind.Normal }).Fit(table).Only);
        var (worst, likewise) = (alone.Expected.Value.Min(e => e.Chance), shared.Expected.Value.Min(e => e.Chance));
        Assert.True(likewise > 2 * worst, FormattableString.Invariant($"{likewise} of bursts against {worst} of frames"));
    }
}
