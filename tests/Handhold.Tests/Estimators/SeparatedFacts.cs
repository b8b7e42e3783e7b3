namespace Handhold.Tests.Estimators;

public class SeparatedFacts
{
    private static KeeperCurve Fit(string file, params string[] terms) =>
        (PublishedTables.Likelihood with { Terms = [.. terms] }).Fit(PublishedTables.Table("separated", file)).Only;

    [Fact]
    public void Complete_separation_has_no_estimates_but_one_sided_bounds_and_names_the_speeds()
    {
        var curve = Fit("complete.csv");
        var status = Assert.Single(curve.Statuses, s => s.Code == StatusCode.Separated);
        Assert.Contains("1 s was a keeper and every one from 2 s on a reject", status.Message, StringComparison.Ordinal);
        Assert.All(curve.Linear!.Coefficients, c => Assert.Null(c.Estimate ?? c.StandardError));
        Assert.Empty(curve.Linear.Covariance);
        var slope = curve.Coefficient("log2Exposure").Interval;
        Assert.Null(slope.Lower);
        Assert.InRange(slope.Upper!.Value, -10, -1);
        Assert.Equal(0, curve.LogLikelihood, 1e-12);
    }

    [Fact]
    public void The_half_keeper_exposure_of_separated_frames_has_a_set_and_no_estimate()
    {
        var half = Fit("complete.csv").HalfKeeperExposure();
        Assert.False(half.HasAnswer);
        Assert.Equal(ExposureSetKind.Bounded, half.Set.Kind);
        Assert.InRange(half.Set.Pieces[0].Lower!.Value, -1, 0.1);
        Assert.InRange(half.Set.Pieces[0].Upper!.Value, 0.9, 2);
        Assert.Contains(half.Statuses, s => s.Code == StatusCode.Separated);
    }

    [Fact]
    public void Between_the_two_sides_any_rate_fits_and_beside_them_the_limit_is_given_with_its_bound()
    {
        var curve = Fit("complete.csv");
        var between = curve.RateAt(ShutterSpeed.FromSeconds(1.5));
        Assert.False(between.HasAnswer);
        Assert.Contains(between.Statuses, s => s.Code == StatusCode.Separated);
        var fast = curve.RateAt(ShutterSpeed.FromSeconds(0.5));
        Assert.Equal((1, 1), (fast.Rate!.Mean, fast.Rate.Interval.Upper));
        Assert.InRange(fast.Rate.Interval.Lower, 0.5, 0.9999);
        Assert.Contains(fast.Statuses, s => s.Code == StatusCode.Separated);
    }

    [Fact]
    public void Quasi_separation_keeps_what_is_finite()
    {
        var curve = Fit("quasi.csv");
        Assert.Contains(curve.Statuses, s => s.Code == StatusCode.QuasiSeparated);
        Assert.Equal(Math.Log(7 / 5.0), curve.Coefficient("intercept").Estimate!.Value, 1e-8);
        Assert.Null(curve.Coefficient("log2Exposure").Estimate);
        Assert.Null(curve.Coefficient("log2Exposure").StandardError);
    }

    [Fact]
    public void A_photographer_who_keeps_every_frame_leaves_the_others_line_as_it_is_alone()
    {
        var curve = Fit("quasi-group.csv", "photographer");
        var alone = Expected.Of("separated", "cases", "quasi-group", "ml_limits");
        foreach (var coefficient in alone.GetProperty("coef_ann_alone").EnumerateObject())
        {
            var ours = curve.Coefficient(Expected.Column(coefficient.Name));
            Assert.Equal(coefficient.Value.GetDouble(), ours.Estimate!.Value, 1e-7);
            Assert.Equal(alone.GetProperty("se").GetProperty(coefficient.Name).GetDouble(), ours.StandardError!.Value, 1e-6);
        }

        var bob = curve.Coefficient("photographer=bob");
        Assert.Null(bob.Estimate);
        Assert.Null(bob.Interval.Upper);
        Assert.InRange(bob.Interval.Lower!.Value, 1, 6);
        Assert.Contains("photographer=bob", Assert.Single(curve.Statuses).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void In_stops_such_a_photographer_is_bounded_on_one_side()
    {
        var effect = Assert.Single(Fit("quasi-group.csv", "photographer").Linear!.InStops);
        Assert.Null(effect.Stops);
        Assert.Null(effect.Upper);
        Assert.InRange(effect.Lower!.Value, 0.5, 5);
    }

    [Theory]
    [InlineData(6, StatusCode.AllKeepers)]
    [InlineData(0, StatusCode.NoKeepers)]
    public void All_alike_has_a_code_of_its_own_and_bounds_the_limit_on_one_side(int keepers, StatusCode code)
    {
        FrameTable table = [.. new[] { -6, -5, -4, -3 }.Select(x => new FrameCell(ShutterSpeed.FromLog2Seconds(x), 6, keepers))];
        foreach (var model in new[] { PublishedTables.Likelihood, PublishedTables.BiasReduced })
        {
            var curve = model.Fit(table).Only;
            Assert.Contains(curve.Statuses, s => s.Code == code);
            Assert.NotEmpty(curve.HalfKeeperExposure(AnswerOptions.Default with { BeyondTested = true }).Sentence);
        }
    }
}
