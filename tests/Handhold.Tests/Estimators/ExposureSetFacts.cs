namespace Handhold.Tests.Estimators;

public class ExposureSetFacts
{
    private static AnswerOptions By(IntervalMethod method, Conditions? conditions = null) =>
        AnswerOptions.Default with
        {
            Intervals = method,
            BeyondTested = true,
            Conditions = conditions ?? Conditions.None,
        };

    [Theory]
    [InlineData(0.5, "x50", 0)]
    [InlineData(0.9, "x90", 1)]
    public void Beetle_doses_have_the_published_estimates_and_intervals(double rate, string key, int place)
    {
        var curve = PublishedEstimateFacts.Fit("bliss", "ml");
        var profile = curve.ExposureFor(rate, By(IntervalMethod.Profile));
        Assert.Equal(Expected.Of("bliss", "dose_p", "dose")[place].GetDouble(), profile.Exposure!.Value.Log2Seconds, 1e-8);
        Ends(
            profile,
            Expected.Number("bliss", "profile_95_doses", key, "lower"),
            Expected.Number("bliss", "profile_95_doses", key, "upper"),
            1e-5
        );
        var fieller = curve.ExposureFor(rate, By(IntervalMethod.Fieller));
        Ends(fieller, Expected.Number("bliss", "fieller_95", key, "lower"), Expected.Number("bliss", "fieller_95", key, "upper"), 1e-7);
        var half = 1.959963984540054 * Expected.Of("bliss", "dose_p", "se")[place].GetDouble();
        var centre = profile.Exposure!.Value.Log2Seconds;
        Ends(curve.ExposureFor(rate, By(IntervalMethod.Delta)), centre - half, centre + half, 1e-8);
        Assert.Equal(("profile", "fieller"), (profile.Set.Method, fieller.Set.Method));
    }

    [Theory]
    [InlineData("F", 0.5, 3.2635874, 2.81328, 3.71390, 2.81222, 3.74064, 2.81761, 3.73152)]
    [InlineData("F", 0.9, 5.3282329, 4.62033, 6.03614, 4.72593, 6.21175, 4.70206, 6.15903)]
    [InlineData("M", 0.9, 4.2939077, 3.64001, 4.94781, 3.73227, 5.10234, 3.70511, 5.04363)]
    public void Budworm_doses_of_each_sex_have_the_known_intervals(
        string sex,
        double rate,
        double dose,
        double deltaLow,
        double deltaHigh,
        double fiellerLow,
        double fiellerHigh,
        double profileLow,
        double profileHigh
    )
    {
        var (curve, conditions) = (PublishedEstimateFacts.Fit("budworm", "common_slope"), Conditions.None.With("sex", sex));
        var profile = curve.ExposureFor(rate, By(IntervalMethod.Profile, conditions));
        Assert.Equal(dose, profile.Exposure!.Value.Log2Seconds, 1e-7);
        Ends(profile, profileLow, profileHigh, 1e-5);
        Ends(curve.ExposureFor(rate, By(IntervalMethod.Fieller, conditions)), fiellerLow, fiellerHigh, 1e-5);
        Ends(curve.ExposureFor(rate, By(IntervalMethod.Delta, conditions)), deltaLow, deltaHigh, 1e-5);
    }

    [Fact]
    public void The_sexes_differ_by_about_a_stop_with_the_known_interval()
    {
        var curve = PublishedEstimateFacts.Fit("budworm", "common_slope");
        foreach (var rate in new[] { 0.5, 0.9 })
        {
            var difference = curve.SlowerUnder(PublishedTables.Males, PublishedTables.Females, rate);
            Assert.Equal(-1.0343252, difference.Stops!.Value.Value, 1e-7);
            Assert.Equal(-1.68888, difference.Interval!.Lower, 1e-5);
            Assert.Equal(-0.40556, difference.Interval.Upper, 1e-5);
            Assert.InRange(difference.ProbabilityBetter!.Value, 0, 0.01);
        }

        var effect = Assert.Single(curve.Linear!.InStops);
        Assert.Equal("sex=M", effect.Term);
        Assert.Equal(
            (-1.0343252, -1.68888, -0.40556),
            (Math.Round(effect.Stops!.Value.Value, 7), Math.Round(effect.Lower!.Value, 5), Math.Round(effect.Upper!.Value, 5))
        );
    }

    [Fact]
    public void With_slopes_of_their_own_the_difference_depends_on_the_rate_and_the_curve_says_so()
    {
        var curve = PublishedEstimateFacts.Fit("budworm", "interaction");
        Assert.Contains(curve.Statuses, s => s.Code == StatusCode.SlopeVaries);
        Assert.Empty(curve.Linear!.InStops);
        Assert.Equal(-1.0651820, curve.SlowerUnder(PublishedTables.Males, PublishedTables.Females, 0.5).Stops!.Value.Value, 1e-7);
        var difference = curve.SlowerUnder(PublishedTables.Males, PublishedTables.Females, 0.9);
        Assert.Equal(-1.7449929, difference.Stops!.Value.Value, 1e-7);
        var interval = Assert.IsType<ConfidenceInterval>(difference.Interval);
        Assert.Equal("delta", interval.Method);
        Assert.Equal(-3.04594, interval.Lower, 1e-5);
        Assert.Equal(-0.44404, interval.Upper, 1e-5);
    }

    [Fact]
    public void A_term_that_was_not_stated_is_asked_for()
    {
        var curve = PublishedEstimateFacts.Fit("budworm", "common_slope");
        Assert.Equal("sex", Assert.Throws<ConditionsException>(() => curve.HalfKeeperExposure()).Term);
        var strange = Assert.Throws<ConditionsException>(() =>
            curve.HalfKeeperExposure(By(IntervalMethod.Profile, Conditions.None.With("sex", "X")))
        );
        Assert.Contains("F or M", strange.Remedy, StringComparison.Ordinal);
    }

    private static void Ends(ExposureAnswer answer, double lower, double upper, double tolerance)
    {
        Assert.Equal(ExposureSetKind.Bounded, answer.Set.Kind);
        Assert.Equal(lower, answer.Set.Pieces[0].Lower!.Value, tolerance);
        Assert.Equal(upper, answer.Set.Pieces[0].Upper!.Value, tolerance);
    }
}
