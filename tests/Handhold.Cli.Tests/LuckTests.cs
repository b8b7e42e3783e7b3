using System.Text.Json;

namespace Handhold.Cli.Tests;

public class LuckTests
{
    /// <summary>Invented; two bursts a speed, more alike within than between.</summary>
    private const string Bursts = """
        exposure,frames,keepers,burst
        1/60,5,5,a
        1/60,5,4,b
        1/30,5,5,c
        1/30,5,2,d
        1/15,5,4,e
        1/15,5,0,f
        1/8,5,2,g
        1/8,5,0,h
        1/4,5,0,i
        1/4,5,0,j
        """;

    private static JsonElement Fit(params string[] options) =>
        Tool.RunWith(Bursts, ["fit", "-", "--estimator", "likelihood", .. options, "--json"]).Json;

    [Fact]
    public void Normal_luck_is_an_sd_on_the_links_scale_with_its_profile_interval()
    {
        var report = Fit("--luck", "normal");
        Assert.Equal(("normal", "link"), (report.Text("luck"), report.Text("scale")));
        var curve = report.List("curves")[0];
        var luck = curve.GetProperty("luckSd");
        Assert.Equal(["burst", "standardError", "interval"], luck.Names());
        Assert.InRange(luck.Number("burst"), luck.GetProperty("interval").Number("lower"), luck.GetProperty("interval").Number("upper"));
        Assert.False(curve.Has("rho"));
        Assert.True(curve.Number("logLikelihood") > Fit().List("curves")[0].Number("logLikelihood"));
        Assert.Empty(report.Gaps());
    }

    [Fact]
    public void Beta_binomial_luck_is_rho_and_both_kinds_come_back_from_a_saved_fit_as_they_were()
    {
        foreach (var (luck, member) in new[] { ("beta-binomial", "rho"), ("normal", "luckSd") })
        {
            using Folder folder = new();
            var file = folder["fit.json"];
            string[] question = ["--at", "1/15", "--keepers", "1", "--assurance", "90%", "--json"];
            string[] options = ["--estimator", "likelihood", "--luck", luck, "--save", file];
            var report = Tool.RunWith(Bursts, ["fit", "-", .. options, "--json"]).Json;
            Assert.Equal(luck, report.Text("luck"));
            Assert.True(report.List("curves")[0].Has(member));
            Assert.Equal(
                Tool.RunWith(Bursts, ["frames", "-", .. options[..4], .. question]).Output,
                Tool.Run(["frames", file, .. question]).Output
            );
        }
    }

    [Fact]
    public void Shared_luck_asks_for_more_frames_and_says_what_bursts_with_a_fresh_grip_would_do()
    {
        string[] question = ["frames", "-", "--at", "1/8", "--keepers", "1", "--assurance", "95%", "--estimator", "likelihood", "--json"];
        var alone = Tool.RunWith(Bursts, question).Json.Answer();
        var shared = Tool.RunWith(Bursts, [.. question, "--luck", "normal"]).Json.Answer();
        Assert.True(shared.Number("frames") > alone.Number("frames"));
        Assert.Empty(alone.List("splits"));
        Assert.NotEmpty(shared.List("splits"));
        var luck = shared.GetProperty("luck");
        Assert.Equal(("normal", "estimated", "stops"), (luck.Text("kind"), luck.Text("origin"), luck.Text("unit")));
        Assert.InRange(luck.Number("correlation"), 0.05, 0.9);
        Assert.Equal(0, alone.GetProperty("luck").Number("correlation"));
    }

    [Fact]
    public void A_constant_correlation_is_the_correlation_at_every_speed()
    {
        var rates = Tool.RunWith(
                Bursts,
                "rate",
                "-",
                "--at",
                "1/30",
                "--at",
                "1/8",
                "--estimator",
                "likelihood",
                "--luck",
                "beta-binomial",
                "--json"
            )
            .Json.List("answers");
        Assert.Equal(2, rates.Length);
        Assert.All(rates, r => Assert.Equal(r.GetProperty("luck").Number("value"), r.GetProperty("luck").Number("correlation"), 1e-12));
    }

    [Fact]
    public void A_beta_binomial_burst_over_several_speeds_is_refused_with_the_way_out()
    {
        var refused = Tool.RunWith(Bursts + "\n1/4,5,1,a\n", "fit", "-", "--estimator", "likelihood", "--luck", "beta-binomial");
        Assert.Equal(3, refused.Code);
        Assert.Contains("burst a has frames at several speeds", refused.Error, StringComparison.Ordinal);
        Assert.Contains("--luck normal", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fit_says_how_two_frames_of_a_burst_correlate_at_the_half_keeper_speed()
    {
        var posterior = Tool.RunWith(Bursts, "fit", "-", "--json").Json.List("curves")[0];
        Assert.InRange(posterior.GetProperty("burstCorrelation").Number("correlation"), 0.005, 0.3);
        var half = Fit("--luck", "beta-binomial").List("curves")[0];
        Assert.Equal(half.GetProperty("rho").Number("estimate"), half.GetProperty("burstCorrelation").Number("correlation"), 1e-12);
        Assert.Equal(0.5, half.GetProperty("burstCorrelation").Number("rate"));
        Assert.False(Fit().List("curves")[0].Has("burstCorrelation"));
        var words = Tool.RunWith(Bursts, "fit", "-", "--estimator", "likelihood", "--luck", "normal").Output;
        Assert.Contains("Two frames of a burst", words, StringComparison.Ordinal);
        Assert.Contains("Luck of a burst, sd", words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_frame_and_the_trend_along_a_burst_are_told_in_stops()
    {
        // Invented: the first frame of each burst is worse, the later ones get better.
        var rows = "exposure,keeper,burst,burst_position\n";
        foreach (var (speed, kept) in new[] { ("1/60", "1111"), ("1/30", "0111"), ("1/15", "0101"), ("1/8", "0001"), ("1/4", "0010") })
        foreach (var burst in "ab")
            for (var i = 0; i < 4; i++)
                rows += FormattableString.Invariant(
                    $"{speed},{(burst == 'a' || i == 3 ? kept[i] : kept[(i + 1) % 4])},{speed}{burst},{i + 1}\n"
                );
        foreach (var term in new[] { "firstFrame", "burst_position" })
        foreach (var estimator in new[] { "likelihood", "posterior" })
        {
            string[] luck = estimator == "likelihood" ? ["--luck", "normal"] : [];
            var effect = Assert.Single(
                Tool.RunWith(rows, ["fit", "-", "--estimator", estimator, "--term", term, .. luck, "--json"])
                    .Json.List("curves")[0]
                    .List("inStops")
            );
            Assert.Equal(term, effect.Text("term"));
            Assert.True(double.IsFinite(effect.Number("stops")));
        }

        Assert.Contains(
            "Each frame further into a burst",
            Tool.RunWith(rows, "fit", "-", "--estimator", "likelihood", "--term", "burst_position").Output,
            StringComparison.Ordinal
        );
    }
}
