using System.Text.Json;

namespace Handhold.Cli.Tests;

public class EstimatorTests
{
    /// <summary>The budworms of shared/golden/budworm: k killed of n at doses of both sexes.</summary>
    private const string Budworm = """
        sex,exposure_s,frames,keepers
        M,1,20,1
        M,2,20,4
        M,4,20,9
        M,8,20,13
        M,16,20,18
        M,32,20,20
        F,1,20,0
        F,2,20,2
        F,4,20,6
        F,8,20,10
        F,16,20,12
        F,32,20,16
        """;

    private const string Separated = """
        exposure,frames,keepers
        1/60,6,6
        1/30,6,6
        1/15,6,0
        1/8,6,0
        """;

    private static readonly string[] s_common = ["--estimator", "likelihood", "--term", "sex"];

    private static JsonElement Fit(params string[] options) => Tool.RunWith(Budworm, ["fit", "-", .. options, "--json"]).Json;

    [Fact]
    public void A_likelihood_fit_reports_coefficients_on_the_links_scale_with_errors_intervals_and_covariance()
    {
        var report = Fit(s_common);
        Assert.Equal(
            ["likelihood", "logit", "link", "none"],
            ((string[])["estimator", "link", "scale", "luck"]).Select(n => report.Text(n))
        );
        Assert.False(report.Has("priors"));
        var curve = report.List("curves")[0];
        Assert.Equal(["intercept", "log2Exposure", "sex=M"], curve.List("coefficients").Select(c => c.Text("name")));
        var slope = curve.List("coefficients")[1];
        Assert.Equal(1.06421396991937, slope.Number("estimate"), 1e-8);
        Assert.Equal(0.131077489527272, slope.Number("standardError"), 1e-8);
        Assert.Equal(0.822854515697543, slope.GetProperty("interval").Number("lower"), 1e-5);
        Assert.Equal("profile", slope.GetProperty("interval").Text("method"));
        Assert.Equal(0.0129933659369159, curve.List("covariance")[1][2].GetDouble(), 1e-8);
        Assert.Equal(-106.620424907664, curve.Number("logLikelihood"), 1e-9);
        Assert.Equal(6.75706423222892, curve.Number("deviance"), 1e-9);
        Assert.False(curve.Has("penalisedLogLikelihood"));
        var effect = Assert.Single(curve.List("inStops"));
        Assert.Equal(("sex=M", -1.0343252), (effect.Text("term"), Math.Round(effect.Number("stops"), 7)));
        Assert.Empty(report.Gaps());
    }

    [Fact]
    public void The_half_keeper_exposure_of_a_fit_with_terms_is_at_the_reference_and_says_so()
    {
        var half = Fit(s_common).List("curves")[0].GetProperty("halfKeeperExposure");
        Assert.Equal(3.26358740371571, half.Number("log2Seconds"), 1e-8);
        Assert.Equal("F", half.GetProperty("conditions").Text("sex"));
        Assert.Equal(("bounded", "profile"), (half.Text("kind"), half.Text("method")));
    }

    [Fact]
    public void A_product_with_exposure_makes_the_slope_vary_and_leaves_out_the_stops()
    {
        var curve = Fit([.. s_common, "--product", "exposure,sex"]).List("curves")[0];
        Assert.Equal(0.352912988736498, curve.List("coefficients")[3].Number("estimate"), 1e-8);
        Assert.Equal("log2Exposure×sex=M", curve.List("coefficients")[3].Text("name"));
        Assert.Contains("slopeVaries", curve.List("status").Select(s => s.Text("code")));
        Assert.Empty(curve.List("inStops"));
    }

    [Fact]
    public void A_bias_reduced_fit_reports_both_likelihoods()
    {
        var report = Fit("--estimator", "bias-reduced", "--together");
        Assert.Equal("bias-reduced", report.Text("estimator"));
        var curve = report.List("curves")[0];
        Assert.True(curve.Number("penalisedLogLikelihood") > curve.Number("logLikelihood"));
    }

    [Theory]
    [InlineData("logit")]
    [InlineData("probit")]
    [InlineData("cloglog")]
    public void Each_link_is_named_and_fits(string link)
    {
        var report = Fit([.. s_common, "--link", link]);
        Assert.Equal(link, report.Text("link"));
        Assert.InRange(report.List("curves")[0].GetProperty("halfKeeperExposure").Number("log2Seconds"), 2.5, 4);
    }

    [Fact]
    public void A_separated_coefficient_keeps_its_name_and_has_no_numbers_but_its_bound()
    {
        var curve = Tool.RunWith(Separated, "fit", "-", "--estimator", "likelihood", "--json").Json.List("curves")[0];
        Assert.Equal(["separated"], curve.List("status").Select(s => s.Text("code")));
        Assert.Equal(["intercept", "log2Exposure"], curve.List("coefficients").Select(c => c.Text("name")));
        Assert.All(curve.List("coefficients"), c => Assert.False(c.Has("estimate") || c.Has("standardError")));
        Assert.Equal(["upper", "method"], curve.List("coefficients")[1].GetProperty("interval").Names());
        Assert.False(curve.Has("covariance"));
        Assert.Empty(curve.Gaps());
    }

    [Fact]
    public void Every_question_about_separated_frames_is_answered_or_says_why_not()
    {
        string[] likelihood = ["--estimator", "likelihood", "--json"];
        Assert.Equal(1, Tool.RunWith(Separated, ["exposure", "-", "--rate", "50%", .. likelihood]).Code);
        Assert.Equal(1, Tool.RunWith(Separated, ["rate", "-", "--at", "1/22", .. likelihood]).Code);
        Assert.Equal(0, Tool.RunWith(Separated, ["rate", "-", "--at", "1/30", .. likelihood]).Code);
        Assert.Equal(
            1,
            Tool.RunWith(Separated, ["frames", "-", "--at", "1/15", "--keepers", "1", "--assurance", "95%", .. likelihood]).Code
        );
        var frames = Tool.RunWith(Separated, ["frames", "-", "--at", "1/30", "--keepers", "1", "--assurance", "95%", .. likelihood])
            .Json.Answer();
        Assert.Equal(("none", "none"), (frames.Text("doubt"), frames.GetProperty("luck").Text("kind")));
        Assert.Contains("separated", frames.List("status").Select(s => s.Text("code")));
        var slowest = Tool.RunWith(Separated, ["slowest", "-", "--rate", "50%", "--assurance", "90%", .. likelihood]).Json.Answer();
        Assert.InRange(slowest.Number("seconds"), 1 / 31.0, 1 / 20.0);
    }

    [Fact]
    public void A_term_must_be_stated_and_its_levels_are_named()
    {
        string[] question = ["exposure", "-", "--rate", "50%", .. s_common];
        var unsaid = Tool.RunWith(Budworm, question);
        Assert.Equal(2, unsaid.Code);
        Assert.Contains("sex", unsaid.Error, StringComparison.Ordinal);
        var strange = Tool.RunWith(Budworm, [.. question, "--set", "sex=X"]);
        Assert.Equal(2, strange.Code);
        Assert.Contains("F or M", strange.Error, StringComparison.Ordinal);
        var males = Tool.RunWith(Budworm, [.. question, "--set", "sex=M", "--beyond-tested", "--json"]).Json.Answer();
        Assert.Equal(2.22926217015506, males.Number("log2Seconds"), 1e-8);
    }

    [Theory]
    [InlineData("fieller", 1.76849319745559, 2.68129685782677)]
    [InlineData("delta", 1.786379, 2.672145)]
    public void Intervals_of_exposures_are_made_as_asked(string method, double lower, double upper)
    {
        var answer = Tool.RunWith(
                Budworm,
                ["exposure", "-", "--rate", "50%", .. s_common, "--set", "sex=M", "--intervals", method, "--json"]
            )
            .Json.Answer();
        Assert.Equal(method, answer.Text("method"));
        var piece = Assert.Single(answer.List("pieces"));
        Assert.Equal(lower, piece.Number("lower"), 1e-6);
        Assert.Equal(upper, piece.Number("upper"), 1e-6);
    }

    [Fact]
    public void Levels_of_a_term_are_compared_in_one_fit_and_curves_of_their_own_by_both()
    {
        string[] question = ["compare", "-", "--between", "sex", "--rate", "50%", "--estimator", "likelihood", "--json"];
        var levels = Tool.RunWith(Budworm, [.. question, "--term", "sex"]).Json.Answer();
        Assert.Equal(("F", "M"), (levels.Text("a"), levels.Text("b")));
        Assert.Equal(-1.0343252, levels.Number("stops"), 1e-7);
        Assert.Equal(-1.68888, levels.Number("lower"), 1e-5);
        var apart = Tool.RunWith(Budworm, question).Json.Answer();
        Assert.Equal(-1.0651820, apart.Number("stops"), 1e-7);
        Assert.InRange(apart.Number("lower"), -2.2, -1.5);
        Assert.Equal("profile", apart.Text("method"));
    }

    [Fact]
    public void A_saved_fit_with_terms_is_fitted_again_to_the_same_report()
    {
        using Folder folder = new();
        var (table, fit) = (folder.Write("budworm.csv", Budworm), folder["fit.json"]);
        var report = Tool.Run(["fit", table, .. s_common, "--product", "exposure,sex", "--save", fit, "--json"]).Output;
        Assert.Equal(report, Tool.Run("fit", fit, "--json").Output);
    }

    [Fact]
    public void The_screen_for_people_has_sentences_and_no_stars()
    {
        var screen = Tool.RunWith(Budworm, ["fit", "-", .. s_common]).Output;
        Assert.Contains("For sex F: Half of the frames are keepers at 10 s", screen, StringComparison.Ordinal);
        Assert.Contains("-1.0 stops", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("*", screen, StringComparison.Ordinal);
        Assert.Equal(0, Tool.RunWith(Separated, "fit", "-", "--estimator", "likelihood").Code);
    }

    [Fact]
    public void Frames_at_one_speed_have_a_rate_and_no_other_speed_is_answered_for()
    {
        const string One = "exposure,frames,keepers\n1/30,8,5\n";
        var curve = Tool.RunWith(One, "fit", "-", "--estimator", "likelihood", "--json").Json.List("curves")[0];
        Assert.Equal(["intercept"], curve.List("coefficients").Select(c => c.Text("name")));
        Assert.Equal(Math.Log(5 / 3.0), curve.List("coefficients")[0].Number("estimate"), 1e-8);
        Assert.Equal(["singleExposure"], curve.List("status").Select(s => s.Text("code")));
        var rate = Tool.RunWith(One, "rate", "-", "--at", "1/30", "--estimator", "likelihood", "--json").Json.Answer();
        Assert.Equal(0.625, rate.GetProperty("rate").Number("mean"), 1e-9);
        Assert.Equal(1, Tool.RunWith(One, "rate", "-", "--at", "1/25", "--estimator", "likelihood", "--json").Code);
    }
}
