namespace Handhold.Tests.Fitting;

public class JudgingFacts
{
    private static readonly FrameTable s_table =
    [
        .. from i in Enumerable.Range(0, 6)
        from j in Enumerable.Range(0, 2)
        select new FrameCell(
            ShutterSpeed.OneOver(240 >> i),
            3,
            new[,]
            {
                { 3, 3 },
                { 3, 2 },
                { 2, 3 },
                { 1, 2 },
                { 1, 0 },
                { 0, 1 },
            }[i, j]
        )
        {
            Conditions = Conditions.None with { Burst = FormattableString.Invariant($"{i}.{j}") },
        },
    ];

    private static readonly Judging s_judge = new() { Sensitivity = 0.96, Specificity = 0.92 };

    /// <summary>
    /// P(called a keeper) = 1 - spec + (sens + spec - 1) P (Magder and Hughes 1997), so a curve with fixed ends under a judge is the curve with mapped ends
    /// under a perfect one: half point and steepness agree, and rates by the inverse of the map.
    /// </summary>
    [Fact]
    public void A_judge_is_a_map_of_the_ends_of_the_curve()
    {
        var judged = (KeeperModel.Default with { Ceiling = Ceiling.Fixed(0.97), Judging = s_judge }).Fit(s_table).Only;
        var mapped = (KeeperModel.Default with { Ceiling = Ceiling.Fixed(0.08 + 0.88 * 0.97), Floor = Floor.Fixed(0.08) })
            .Fit(s_table)
            .Only;
        foreach (var (one, other) in judged.Parameters.Zip(mapped.Parameters))
        {
            Assert.Equal(other.Mean, one.Mean, 1e-9);
            Assert.Equal(other.StandardDeviation, one.StandardDeviation, 1e-9);
        }

        var options = AnswerOptions.Default with { CheckPriors = false };
        var (called, real) = (
            mapped.RateAt(ShutterSpeed.OneOver(30), options).Rate!,
            judged.RateAt(ShutterSpeed.OneOver(30), options).Rate!
        );
        Assert.Equal((called.Mean - 0.08) / 0.88, real.Mean, 1e-6);
        Assert.Equal(mapped.LogLikelihood, judged.LogLikelihood, 1e-9);
    }

    [Fact]
    public void The_points_of_a_curve_with_terms_allow_for_the_judge_as_the_quadrature_does()
    {
        var model = KeeperModel.Default with { Judging = s_judge };
        var exact = model.Fit(s_table).Only;
        var points = Handhold.Fitting.TermFits.Run(
            model,
            Handhold.Fitting.CurveRows.Split(model, s_table),
            null,
            TestContext.Current.CancellationToken
        );
        foreach (var (one, other) in exact.Parameters.Zip(points[0].Parameters))
            Assert.Equal(one.Mean, other.Mean, 0.03 * one.StandardDeviation);
    }

    [Fact]
    public void A_strict_judge_hides_keepers_and_a_lenient_one_makes_some_up()
    {
        var at = ShutterSpeed.OneOver(30);
        double Rate(Judging judging) =>
            (KeeperModel.Default with { Judging = judging })
                .Fit(s_table)
                .Only.RateAt(at, AnswerOptions.Default with { CheckPriors = false })
                .Rate!.Mean;
        Assert.True(Rate(new() { Sensitivity = 0.8 }) > Rate(Judging.Perfect));
        Assert.True(Rate(new() { Specificity = 0.8 }) < Rate(Judging.Perfect));
    }

    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(0, 1)]
    [InlineData(1, 1.1)]
    [InlineData(double.NaN, 1)]
    public void A_judge_who_says_nothing_is_refused_with_both_numbers(double sensitivity, double specificity)
    {
        var model = KeeperModel.Default with
        {
            Judging = new() { Sensitivity = sensitivity, Specificity = specificity },
        };
        Assert.Contains("sensitivity", Assert.Throws<ArgumentException>(() => model.Fit(s_table)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_saved_fit_keeps_its_judge()
    {
        var fit = (KeeperModel.Default with { Judging = s_judge }).Fit(s_table);
        Assert.Equal(s_judge, SavedFit.Read(SavedFit.Write(fit)).Model.Judging);
    }
}
