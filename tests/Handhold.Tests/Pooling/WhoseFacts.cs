using Handhold.Kernels;

namespace Handhold.Tests.Pooling;

public class WhoseFacts
{
    private static readonly ShutterSpeed s_at = ShutterSpeed.FromSeconds(1);

    private static AnswerOptions For(Whose? whose, string? photographer = null, string? setup = null) =>
        AnswerOptions.Default with
        {
            Whose = whose,
            Conditions = new() { Photographer = photographer, Setup = setup },
        };

    [Theory]
    [InlineData(0.90, 1, 0.8661)]
    [InlineData(0.90, 2, 0.7967)]
    [InlineData(0.95, 1, 0.9273)]
    [InlineData(0.95, 2, 0.8660)]
    public void The_average_over_levels_lies_nearer_a_half_than_that_of_a_typical_level(double typical, double sd, double average) =>
        Assert.Equal(average, AveragedLink.At(Link.Logit, Elementary.Logit(typical), sd).F, 1e-4);

    [Theory]
    [InlineData("nested")]
    [InlineData("nestedBoth")]
    [InlineData("uncorrelated")]
    public void The_population_average_is_that_of_levels_drawn_with_the_spreads_estimated(string structure)
    {
        var curve = Groups.Curve(structure);
        var typical = curve.RateAt(s_at, For(Whose.Typical)).Rate!;
        // At one second log2 exposure is zero: slopes do not show.
        var sd = Math.Sqrt(curve.Linear!.Groups.Sum(g => Math.Pow(g.Spreads.Single(s => s.Name == "intercept").Estimate!.Value, 2)));
        var expected = AveragedLink.At(Link.Logit, Elementary.Logit(typical.Mean), sd).F;
        Assert.Equal(expected, curve.RateAt(s_at, For(Whose.Population)).Rate!.Mean, 1e-8);
        Assert.Equal(expected, curve.RateAt(s_at, For(Whose.NewPhotographer)).Rate!.Mean, 1e-8);
        Assert.Equal(typical.Mean, curve.RateAt(s_at, For(Whose.NewPhotographer)).Rate!.Median, 1e-8);
    }

    [Fact]
    public void This_one_stands_where_its_effects_put_it()
    {
        var curve = Groups.Curve("nestedBoth");
        var (photographers, setups) = (curve.Linear!.Groups[0].Levels, curve.Linear!.Groups[1].Levels);
        var (photographer, setup) = (photographers[5], setups.First(l => l.Parent == photographers[5].Label));
        var predictor = curve.Linear!.Coefficients[0].Estimate!.Value + photographer.Effects[0].Mode + setup.Effects[0].Mode;
        var rate = curve.RateAt(s_at, For(Whose.This, photographer.Label, setup.Label)).Rate!;
        Assert.Equal(Elementary.Logistic(predictor).Mu, rate.Median, 1e-8);
        Assert.InRange(rate.Median, rate.Interval.Lower, rate.Interval.Upper);
        var slope = curve.Linear!.Coefficients[1].Estimate!.Value + photographer.Effects[1].Mode;
        var half = curve.HalfKeeperExposure(For(Whose.This, photographer.Label, setup.Label)).Exposure!.Value;
        Assert.Equal(-predictor / slope, half.Log2Seconds, 1e-8);
        Assert.Equal(half.Log2Seconds, setup.HalfKeeperExposure!.Value.Log2Seconds, 1e-8);
    }

    [Theory]
    [InlineData("nested")]
    [InlineData("nestedBoth")]
    [InlineData("crossed")]
    public void The_less_is_known_of_a_level_the_wider_its_interval(string structure)
    {
        var curve = Groups.Curve(structure);
        foreach (var seconds in new[] { 0.25, 1, 4 })
        {
            var at = ShutterSpeed.FromSeconds(seconds);
            var typical = curve.RateAt(at, For(Whose.Typical)).Rate!.Interval;
            var fresh = curve.RateAt(at, For(Whose.NewPhotographer)).Rate!.Interval;
            var known = curve.RateAt(at, For(Whose.This, "p01", "s1")).Rate!.Interval;
            var setup = curve.RateAt(at, For(Whose.NewSetup, "p01")).Rate!.Interval;
            Assert.True(fresh.Lower <= typical.Lower && fresh.Upper >= typical.Upper);
            Assert.True(Width(known) < Width(setup));
            Assert.True(Width(setup) < Width(fresh));
        }

        static double Width(Interval interval) => Elementary.Logit(interval.Upper) - Elementary.Logit(interval.Lower);
    }

    [Fact]
    public void Frames_of_a_new_photographer_share_one_draw_and_those_of_the_population_none()
    {
        var curve = Groups.Curve("nested");
        int Needed(Whose whose) => curve.FramesNeeded(s_at, 1, 0.99, For(whose)).Frames!.Value;
        Assert.True(Needed(Whose.NewPhotographer) > Needed(Whose.Population));
    }

    [Fact]
    public void Whose_must_be_said_where_levels_vary_and_cannot_be_elsewhere()
    {
        var curve = Groups.Curve("nested");
        Assert.Equal("whose", Assert.Throws<ConditionsException>(() => curve.RateAt(s_at)).Term);
        Assert.Equal("photographer", Assert.Throws<ConditionsException>(() => curve.RateAt(s_at, For(Whose.This))).Term);
        Assert.Contains(
            "p41",
            Assert.Throws<ConditionsException>(() => curve.RateAt(s_at, For(Whose.NewSetup, "p41"))).Message,
            StringComparison.Ordinal
        );
        var alone = (Groups.Model("nested") with { Varies = [] }).Fit(Groups.Table).Only;
        Assert.Equal("whose", Assert.Throws<ConditionsException>(() => alone.RateAt(s_at, For(Whose.Typical))).Term);
        Assert.NotNull(alone.RateAt(s_at, For(Whose.This)).Rate);
    }
}
