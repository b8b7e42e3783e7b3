using System.Text.Json;

namespace Handhold.Cli.Tests;

public class FitJsonTests(Fitted fitted)
{
    private JsonElement Curve => fitted.Plain.List("curves")[0];

    [Fact]
    public void The_report_names_its_version_estimator_link_scale_luck_and_level()
    {
        Assert.Equal(1, fitted.Plain.Number("schemaVersion"));
        Assert.Equal(
            ["posterior", "logit", "stops", "normal"],
            ((string[])["estimator", "link", "scale", "luck"]).Select(n => fitted.Plain.Text(n))
        );
        Assert.Equal(0.95, fitted.Plain.Number("level"));
        Assert.Equal("priors-1", fitted.Plain.GetProperty("priors").Text("version"));
    }

    [Fact]
    public void Counts_add_up_to_the_table()
    {
        var data = fitted.Plain.GetProperty("data");
        Assert.Equal(
            (5, 30, 17, 5, 0),
            (data.Number("rows"), data.Number("frames"), data.Number("keepers"), data.Number("cells"), data.Number("unjudged"))
        );
        Assert.Equal([1 / 125.0, 1 / 60.0, 1 / 30.0, 1 / 15.0, 1 / 8.0], data.List("exposures").Select(e => e.GetDouble()));
        Assert.Equal(30, Curve.List("cells").Sum(cell => cell.Number("frames")));
    }

    [Fact]
    public void Frames_that_nobody_judged_are_counted_and_not_used()
    {
        var data = fitted.Lenses.GetProperty("data");
        Assert.Equal((14, 13, 1), (data.Number("rows"), data.Number("frames"), data.Number("unjudged")));
    }

    [Fact]
    public void Parameters_are_named_with_median_mean_sd_and_an_equal_tailed_interval_around_the_median()
    {
        var parameters = Curve.List("coefficients");
        Assert.Equal(["tau0", "log2b", "ceiling", "sessionLuck", "burstLuck"], parameters.Select(p => p.Text("name")));
        Assert.All(
            parameters,
            p =>
            {
                var interval = p.GetProperty("interval");
                Assert.Equal("equalTailed", interval.Text("method"));
                Assert.InRange(p.Number("estimate"), interval.Number("lower"), interval.Number("upper"));
                Assert.True(p.Has("mean") && p.Number("sd") > 0);
                Assert.False(p.Has("standardError"));
            }
        );
    }

    [Fact]
    public void The_half_keeper_exposure_says_one_speed_three_times()
    {
        var half = Curve.GetProperty("halfKeeperExposure");
        Assert.Equal("bounded", half.Text("kind"));
        Assert.Equal(Math.Log2(half.Number("seconds")), half.Number("log2Seconds"), 12);
        Assert.True(
            ShutterSpeed.Parse(half.Text("shutter")!).IsSameSpeed(ShutterSpeed.FromSeconds(half.Number("seconds")), tolerance: 0.2)
        );
        var piece = Assert.Single(half.List("pieces"));
        Assert.InRange(half.Number("log2Seconds"), piece.Number("lower"), piece.Number("upper"));
    }

    [Fact]
    public void Ceiling_and_luck_are_shares_and_stops()
    {
        Assert.InRange(Curve.GetProperty("ceiling").Number("estimate"), 0.5, 1);
        Assert.InRange(Curve.GetProperty("luckSd").Number("session"), 0, 2);
        Assert.InRange(Curve.GetProperty("luckSd").Number("burst"), 0, 2);
    }

    [Fact]
    public void The_key_holds_the_splitting_columns_and_no_others()
    {
        Assert.Empty(Curve.GetProperty("key").Names());
        Assert.All(fitted.Lenses.List("curves"), c => Assert.Equal(["photographer", "setup", "criterion"], c.GetProperty("key").Names()));
        Assert.Equal(["200 mm", "50 mm"], fitted.Lenses.List("curves").Select(c => c.GetProperty("key").Text("setup")));
    }

    [Fact]
    public void Nothing_is_null_or_a_number_in_words() => Assert.Empty(fitted.Plain.Gaps().Concat(fitted.Lenses.Gaps()));

    [Fact]
    public void Every_status_has_a_code_with_a_small_first_letter_and_a_sentence() =>
        Assert.All(
            fitted.Plain.List("curves").Concat(fitted.Lenses.List("curves")).SelectMany(c => c.List("status")),
            s =>
            {
                Assert.Matches("^[a-z][A-Za-z]+$", s.Text("code"));
                Assert.EndsWith(".", s.Text("message"), StringComparison.Ordinal);
            }
        );

    [Fact]
    public void A_prior_of_the_users_own_is_printed_as_given()
    {
        var priors = Tool.RunWith(
                Tables.Plain,
                "fit",
                "-",
                "--prior",
                "tau0=normal(-5.25,1.5)",
                "--prior",
                "b=lognormal(2,0.1)",
                "--luck",
                "none",
                "--json"
            )
            .Json.GetProperty("priors");
        Assert.Equal((-5.25, 1.5), (priors.GetProperty("tau0").Number("mean"), priors.GetProperty("tau0").Number("sd")));
        Assert.Equal((2, 0.1), (priors.GetProperty("b").Number("median"), priors.GetProperty("b").Number("logSd")));
    }

    [Fact]
    public void Fixed_ceiling_and_no_luck_leave_two_parameters()
    {
        var report = Tool.RunWith(Tables.Plain, "fit", "-", "--ceiling", "97%", "--luck", "none", "--without-cells", "--json").Json;
        var curve = report.List("curves")[0];
        Assert.Equal(["tau0", "log2b"], curve.List("coefficients").Select(c => c.Text("name")));
        Assert.Equal(0.97, curve.GetProperty("ceiling").Number("estimate"));
        Assert.Equal("none", report.Text("luck"));
        Assert.False(curve.Has("luckSd") || curve.Has("cells"));
    }
}
