using Handhold.Kernels;

namespace Handhold.Tests.Fitting;

public class LeaveOneOutFacts
{
    private static readonly KeeperModel Independent = KeeperModel.Default with { Luck = LuckKind.None, Ceiling = Ceiling.One };

    private static FrameTable Table(params int[] keepers) =>
        [.. keepers.Select((k, i) => new FrameCell(ShutterSpeed.FromLog2Seconds(i - 8), 20, k))];

    [Fact]
    public void What_the_other_speeds_expect_is_the_posterior_predictive_without_the_speed()
    {
        var table = Table(20, 18, 12, 14, 5, 1);
        var curve = Independent.Fit(table).Only;
        var (frames, keepers) = (20, curve.Data.Speeds[2].Keepers);
        var (fewer, exactly, more, rate, total) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var u = -5.0; u <= 5; u += 0.1)
        for (var tau = -10.0; tau <= 2; tau += 0.02)
        {
            var b = Independent.Priors.Steepness.Median * Math.Exp(Independent.Priors.Steepness.LogStandardDeviation * u);
            var z = (tau - curve.HalfPointPrior!.Mean) / curve.HalfPointPrior.StandardDeviation;
            var log = -(z * z + u * u) / 2;
            foreach (var speed in curve.Data.Speeds.Where((_, i) => i != 2))
            {
                var (keep, miss) = Elementary.Logistic(b * (tau - speed.Exposure.Log2Seconds));
                log += speed.Keepers * Math.Log(keep) + (speed.Frames - speed.Keepers) * Math.Log(miss);
            }

            var (p, q) = Elementary.Logistic(b * (tau - curve.Data.Speeds[2].Exposure.Log2Seconds));
            var (atLeast, below) = Binomial.Tails(keepers, frames, p, q);
            var (above, _) = Binomial.Tails(keepers + 1, frames, p, q);
            var weight = Math.Exp(log);
            total += weight;
            fewer += weight * below;
            more += weight * above;
            exactly += weight * (atLeast - above);
            rate += weight * p;
        }

        var expected = curve.Expected.Value[2];
        Assert.Equal(
            [rate / total, fewer / total, exactly / total, more / total],
            [expected.Rate, expected.Fewer, expected.Exactly, expected.More],
            (a, b) => Math.Abs(a - b) < 0.002 + 0.02 * a
        );
    }

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    [InlineData(Estimator.Likelihood)]
    public void What_a_speed_showed_does_not_enter_what_is_expected_of_it(Estimator estimator)
    {
        Assert.Equal(Rate(2), Rate(13), 0.003);

        double Rate(int keepers) =>
            (KeeperModel.Default with { Estimator = estimator }).Fit(Table(20, 18, keepers, 8, 5, 1)).Only.Expected.Value[2].Rate;
    }

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    [InlineData(Estimator.Likelihood)]
    public void A_speed_far_from_what_the_others_expect_is_named_with_the_size_of_the_gap(Estimator estimator)
    {
        var curve = (KeeperModel.Default with { Estimator = estimator }).Fit(Table(20, 19, 4, 17, 12, 3, 1)).Only;
        var status = Assert.Single(curve.Statuses, s => s.Code == StatusCode.CurveDoesNotFit);
        Assert.Matches(@"^At 1/64 s, 4 of 20 frames were keepers: [67]\d points below the [89]\d % that", status.Message);
    }

    [Fact]
    public void Speeds_without_which_nothing_finite_is_left_are_not_judged()
    {
        var curve = (KeeperModel.Default with { Estimator = Estimator.Likelihood }).Fit(Table(20, 20, 9, 11, 0)).Only;
        Assert.Equal(
            [false, false, true, true, false],
            curve.Data.Speeds.Select(s => curve.Expected.Value.All(e => e.Seen.Exposure != s.Exposure))
        );
    }

    [Fact]
    public void Two_bursts_of_shared_luck_spread_wider_than_independent_frames()
    {
        double[] weights = [0.5, 0.5];
        var burst = CountLaw.Mixed(weights, [CountLaw.Binomial(3, 0.9, 0.1), CountLaw.Binomial(3, 0.1, 0.9)]);
        var two = burst.Plus(burst);
        Assert.Equal(3, two.Mean, 1e-12);
        // All three: (0.9³ + 0.1³) / 2 = 0.365 in each burst.
        Assert.Equal(0.365 * 0.365, two.Around(6).Exactly, 1e-12);
        var (fewer, exactly, more) = two.Around(2);
        Assert.Equal(1, fewer + exactly + more, 1e-12);
    }

    [Fact]
    public void Beyond_five_hundred_frames_the_normal_law_takes_over_smoothly()
    {
        var exact = CountLaw.Binomial(500, 0.3, 0.7).Around(140);
        var normal = CountLaw.Binomial(501, 0.3, 0.7).Around(140);
        Assert.Equal(exact.Fewer, normal.Fewer, 0.01);
        Assert.Equal(exact.More, normal.More, 0.01);
    }
}
