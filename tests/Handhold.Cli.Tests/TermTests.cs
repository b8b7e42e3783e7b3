namespace Handhold.Cli.Tests;

/// <summary>Terms of a posterior, from table to answer.</summary>
public class TermTests
{
    /// <summary>Made by hand: a stabiliser off and on, far away and at life size.</summary>
    private const string Close = """
        exposure,frames,keepers,stabiliser_mode,stabiliser_stops,magnification,focal_eq_mm,criterion
        1/250,5,5,off,0,0.02,100,print
        1/125,5,5,off,0,0.02,100,print
        1/60,5,4,off,0,0.02,100,print
        1/30,5,2,off,0,0.02,100,print
        1/15,5,1,off,0,0.02,100,print
        1/30,5,5,lens,4,0.02,100,print
        1/15,5,4,lens,4,0.02,100,print
        1/8,5,3,lens,4,0.02,100,print
        1/4,5,1,lens,4,0.02,100,print
        1/500,5,4,off,0,1,100,print
        1/250,5,3,off,0,1,100,print
        1/125,5,1,off,0,1,100,print
        1/500,5,4,lens,4,1,100,print
        1/250,5,3,lens,4,1,100,print
        1/125,5,2,lens,4,1,100,print
        """;

    private const string Windy = """
        exposure,frames,keepers,wind,grip
        1/125,4,4,1,both
        1/60,4,3,1,both
        1/30,4,1,1,both
        1/125,4,3,5,one
        1/60,4,2,5,one
        1/30,4,0,5,one
        1/60,4,3,3,strap
        """;

    private static readonly string[] s_lifeSize = ["--set", "magnification=1"];

    [Fact]
    public void A_fit_says_what_a_stabiliser_buys_far_away_and_at_life_size()
    {
        var screen = Tool.RunWith(Close, "fit", "-").Output;
        Assert.Contains("For stabiliser off, magnification 0.02: Half of the frames", screen, StringComparison.Ordinal);
        Assert.Contains("Stabiliser lens instead of off, 4 rated stops, at magnification 0.02", screen, StringComparison.Ordinal);
        Assert.Contains("Stabiliser lens instead of off, 4 rated stops, at life size", screen, StringComparison.Ordinal);
        Assert.Contains("Magnification 1 instead of far away", screen, StringComparison.Ordinal);
        var effects = Fit(Close).List("curves")[0].List("inStops");
        Assert.Equal(["stabiliser=lens", "stabiliser=lens", "magnification"], effects.Select(e => e.Text("term")));
        Assert.All(effects, e => Assert.InRange(e.Number("stops"), e.Number("lower"), e.Number("upper")));
        Assert.Equal(
            [(4.0, 0.02), (4, 1)],
            effects[..2].Select(e => (e.GetProperty("at").Number("stabiliser_stops"), e.GetProperty("at").Number("magnification")))
        );
        Assert.True(effects[0].Number("stops") > 1 + effects[1].Number("stops"));
        Assert.True(effects[1].Number("lower") >= 0, "a stabiliser that helps on far subjects does not harm on close ones");
    }

    [Fact]
    public void A_question_that_leaves_a_term_open_is_told_what_to_set()
    {
        Refused("Set stabiliser_mode to off or lens", "rate", "-", "--at", "1/60", "--set", "magnification=1");
        Refused("Set magnification, 0 for a far subject", "rate", "-", "--at", "1/60", "--set", "stabiliser_mode=lens");
        Refused("No frame had body", "rate", "-", "--at", "1/60", "--set", "stabiliser_mode=body", "--set", "magnification=1");

        static void Refused(string remedy, params string[] args)
        {
            var tool = Tool.RunWith(Close, args);
            Assert.Equal(2, tool.Code);
            Assert.Contains(remedy, tool.Error, StringComparison.Ordinal);
            Assert.Contains("--set", tool.Error, StringComparison.Ordinal);
        }
    }

    /// <summary>All frames of the mode had four rated stops in use.</summary>
    [Fact]
    public void A_mode_brings_the_rated_stops_that_its_frames_had()
    {
        string[] question = ["rate", "-", "--at", "1/125", "--set", "stabiliser_mode=lens", .. s_lifeSize, "--json"];
        var said = Tool.RunWith(Close, [.. question, "--set", "stabiliser_stops=4"]);
        Assert.Equal(0, said.Code);
        Assert.Equal(Mean(said), Mean(Tool.RunWith(Close, question)));

        static double Mean(Tool tool) => tool.Json.Answer().GetProperty("rate").Number("mean");
    }

    [Fact]
    public void Modes_of_a_stabiliser_are_compared_within_one_curve()
    {
        string[] question = ["compare", "-", "--between", "stabiliser_mode", "--rate", "50%", .. s_lifeSize];
        var close = Tool.RunWith(Close, [.. question, "--json"]).Json.Answer();
        Assert.Equal(("off", "lens"), (close.Text("a"), close.Text("b")));
        var effect = Fit(Close).List("curves")[0].List("inStops")[1];
        Assert.Equal(effect.Number("stops"), close.Number("stops"), 1e-9);
        Assert.Contains("lens allows speeds", Tool.RunWith(Close, question).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("stabiliser", "ratedStop=normal(0.9,0.05)", "normal(0.9, 0.05)")]
    [InlineData("magnification", "magnification=normal(2,0.2)", "normal(2, 0.2)")]
    public void A_prior_of_a_term_is_taken_and_told(string parameter, string prior, string told)
    {
        var parameters = Fit(Close, "--prior", prior).List("curves")[0].List("coefficients");
        Assert.Equal(told, parameters.Single(p => p.Text("name") == parameter).Text("prior"));
    }

    [Fact]
    public void Columns_of_ones_own_are_terms_of_a_posterior()
    {
        var curve = Fit(Windy, "--term", "wind", "--term", "grip").List("curves")[0];
        Assert.Equal(["wind", "grip=one", "grip=strap"], curve.List("inStops").Select(e => e.Text("term")));
        var steep = Fit(Windy, "--term", "wind", "--product", "exposure,wind").List("curves")[0];
        Assert.Contains("log2Exposure×wind", steep.List("coefficients").Select(c => c.Text("name")));
        Assert.Empty(steep.List("inStops"));
        var screen = Tool.RunWith(Windy, "fit", "-", "--term", "wind", "--term", "grip").Output;
        Assert.Contains("wind, each 1 more", screen, StringComparison.Ordinal);
        Assert.Contains("grip one instead of both", screen, StringComparison.Ordinal);
        Assert.Equal(0, Tool.RunWith(Windy, "compare", "-", "--between", "grip", "--term", "grip", "--rate", "50%").Code);
    }

    [Fact]
    public void A_saved_posterior_with_terms_answers_as_the_table_did()
    {
        using Folder folder = new();
        var (table, fit) = (folder.Write("close.csv", Close), folder["fit.json"]);
        string[] question = ["--at", "1/125", "--set", "stabiliser_mode=off", .. s_lifeSize, "--json"];
        Assert.Equal(0, Tool.Run("fit", table, "--save", fit).Code);
        Assert.Equal(Tool.Run(["rate", table, .. question]).Output, Tool.Run(["rate", fit, .. question]).Output);
    }

    private static System.Text.Json.JsonElement Fit(string table, params string[] options) =>
        Tool.RunWith(table, ["fit", "-", .. options, "--json"]).Json;
}
