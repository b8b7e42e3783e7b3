using Handhold.Solvers;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Luck;

public class NoLuckFacts
{
    /// <summary>Every burst has as many keepers as its speed lets expect: less spread than chance.</summary>
    private static readonly FrameTable s_even = [.. Bursts(60, 4), .. Bursts(30, 3), .. Bursts(15, 2), .. Bursts(8, 1)];

    private static readonly FrameTable s_single =
    [
        new(OneOver(60), 6, 6),
        new(OneOver(30), 6, 4),
        new(OneOver(15), 6, 3),
        new(OneOver(8), 6, 1),
    ];

    private static IEnumerable<FrameCell> Bursts(int speed, int keepers) =>
        Enumerable
            .Range(0, 5)
            .Select(i => new FrameCell(OneOver(speed), 5, keepers)
            {
                Conditions = Conditions.None with { Burst = FormattableString.Invariant($"{speed}.{i}") },
            });

    [Theory]
    [InlineData(LuckKind.Normal)]
    [InlineData(LuckKind.BetaBinomial)]
    public void Bursts_more_even_than_chance_have_no_luck_and_the_fit_of_independent_frames(LuckKind luck)
    {
        var (lucky, plain) = (Fit(luck, s_even), Fit(LuckKind.None, s_even));
        var (with, without) = (lucky.Linear!, plain.Linear!);
        Assert.Equal((0, null), (with.Luck!.Estimate, with.Luck.StandardError));
        Assert.Equal(0, with.Luck.Interval.Lower);
        Assert.InRange(with.Luck.Interval.Upper!.Value, 0.001, 2);
        Assert.Equal(without.LogLikelihood, with.LogLikelihood, 1e-10);
        for (var i = 0; i < with.Coefficients.Length; i++)
        {
            Assert.Equal(without.Coefficients[i].Estimate!.Value, with.Coefficients[i].Estimate!.Value, 1e-8);
            Assert.Equal(without.Coefficients[i].StandardError!.Value, with.Coefficients[i].StandardError!.Value, 1e-8);
        }

        Assert.Contains(lucky.Statuses, s => s.Code == StatusCode.NoGroupSpread);
        Assert.Equal(plain.RateAt(OneOver(15)).Rate!.Mean, lucky.RateAt(OneOver(15)).Rate!.Mean, 1e-9);
        Assert.Equal(0, lucky.RateAt(OneOver(15)).Luck.Correlation);
    }

    [Theory]
    [InlineData(LuckKind.Normal)]
    [InlineData(LuckKind.BetaBinomial)]
    public void Frames_without_bursts_say_that_luck_cannot_be_told_and_are_fitted_as_independent(LuckKind luck)
    {
        var (lucky, plain) = (Fit(luck, s_single), Fit(LuckKind.None, s_single));
        Assert.Contains(lucky.Statuses, s => s.Code == StatusCode.BurstsNotAssessable);
        Assert.Null(lucky.Linear!.Luck);
        Assert.Equal(plain.Linear!.Coefficients.Select(c => c.Estimate), lucky.Linear.Coefficients.Select(c => c.Estimate));
    }

    [Fact]
    public void A_posterior_without_bursts_keeps_the_prior_of_burst_luck()
    {
        var luck = KeeperModel.Default.Fit(s_single).Only.Parameters.Single(p => p.Name == "burstLuck");
        // The quartiles of a half-normal: 0.6745 scales at the median.
        Assert.Equal(0.25 * 0.6744897501960817, luck.Median, 0.02);
    }

    [Fact]
    public void A_correlation_that_tends_to_zero_gives_the_fit_of_independent_frames()
    {
        ClusteredProblem problem = new(new(["intercept"], new double[] { 1, 1 }, new[] { 5, 7 }, new[] { 2, 6 }), [0, 1, 2], [1, 1], 2, 0);
        BetaRates law = new(problem);
        foreach (var (kept, rejects) in new[] { (2, 3), (6, 1), (0, 5), (5, 0) })
        foreach (var spread in new[] { 1e-12, 1e-9, 1e-6 })
            Assert.Equal(
                law.LogLikelihood(new([0.3], [kept], [rejects]), 0),
                law.LogLikelihood(new([0.3], [kept], [rejects]), spread),
                1e-10
            );
    }

    private static KeeperCurve Fit(LuckKind luck, FrameTable table) =>
        (KeeperModel.Default with { Estimator = Estimator.Likelihood, Luck = luck }).Fit(table).Only;
}
