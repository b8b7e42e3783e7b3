namespace Handhold.Cli.Tests;

public class VaryTests
{
    /// <summary>Invented; two photographers with two setups each, the labels of which repeat.</summary>
    private static string Table { get; } =
        "photographer,setup,exposure,frames,keepers\n"
        + string.Concat(
            from photographer in new[] { "ada", "bo", "cy" }
            from setup in new[] { "tele", "wide" }
            from shot in new[] { ("1/60", 9), ("1/30", 7), ("1/15", 4), ("1/8", 1) }
            let keepers = Math.Clamp(shot.Item2 + (photographer[0] - 'b') * 2 + (setup == "tele" ? -1 : 1), 0, 10)
            select $"{photographer},{setup},{shot.Item1},10,{keepers}\n"
        );

    private static readonly string[] s_nested =
    [
        "--estimator",
        "likelihood",
        "--varies",
        "photographer=intercept",
        "--varies",
        "setup=intercept",
        "--within",
        "setup=photographer",
    ];

    [Fact]
    public void Groups_hold_sds_and_levels_with_their_parents()
    {
        var report = Tool.RunWith(Table, ["fit", "-", .. s_nested, "--json"]).Json;
        Assert.Empty(report.Gaps());
        var groups = Assert.Single(report.List("curves")).List("groups");
        Assert.Equal(["photographer", "setup"], groups.Select(g => g.Text("column")));
        Assert.False(groups[0].Has("within"));
        Assert.Equal("photographer", groups[1].Text("within"));
        Assert.Equal(3, groups[0].List("levels").Length);
        Assert.Equal(6, groups[1].List("levels").Length);
        Assert.Equal(("tele", "ada"), (groups[1].List("levels")[0].Text("level"), groups[1].List("levels")[0].Text("parent")));
        Assert.All(groups, g => Assert.True(g.GetProperty("sd").Number("intercept") >= 0));
        Assert.All(groups.SelectMany(g => g.List("levels")), level => Assert.InRange(level.Number("borrowed"), 0, 1));
    }

    [Fact]
    public void People_are_told_each_half_keeper_speed_the_spread_and_what_was_borrowed()
    {
        var text = Tool.RunWith(Table, ["fit", "-", .. s_nested]).Output;
        Assert.Contains("A typical photographer and setup:", text, StringComparison.Ordinal);
        Assert.Contains("Between 3 photographers half-keeper speeds spread by", text, StringComparison.Ordinal);
        Assert.Contains("Borrowed", text, StringComparison.Ordinal);
        Assert.Contains("ada · tele", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_posterior_tells_levels_in_stops_under_priors_of_ones_own()
    {
        string[] nested = [.. s_nested.Skip(2), "--luck", "none", "--ceiling", "one", "--prior", "setupTau=half-normal(0.1)"];
        var report = Tool.RunWith(Table, ["fit", "-", .. nested, "--json"]).Json;
        Assert.Empty(report.Gaps());
        Assert.Equal("stops", report.Text("scale"));
        Assert.Equal(0.1, report.GetProperty("priors").GetProperty("spreads").GetProperty("setupTau").Number("scale"));
        var groups = Assert.Single(report.List("curves")).List("groups");
        Assert.Equal(["photographer", "setup"], groups.Select(g => g.Text("column")));
        Assert.True(groups[1].GetProperty("sd").Number("tau0") < groups[0].GetProperty("sd").Number("tau0"));
        Assert.All(groups.SelectMany(g => g.List("levels")), level => Assert.InRange(level.Number("borrowed"), 0, 1));
        var text = Tool.RunWith(
            Table,
            ["compare", "-", .. nested, "--between", "photographer", "--set", "setup=tele", "--whose", "this", "--rate", "0.5"]
        );
        Assert.Contains("bo allows speeds", text.Output, StringComparison.Ordinal);
        Assert.Contains("of 80 frames at 4 speeds", text.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("of 240 frames", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Levels_of_the_likelihood_are_compared_and_each_side_rests_on_frames_of_its_own()
    {
        string[] asked =
        [
            "compare",
            "-",
            .. s_nested,
            "--between",
            "photographer",
            "--set",
            "setup=tele",
            "--whose",
            "this",
            "--rate",
            "0.5",
        ];
        var answers = Tool.RunWith(Table, [.. asked, "--json"]).Json.List("answers");
        Assert.Equal([("ada", "bo"), ("ada", "cy"), ("bo", "cy")], answers.Select(d => (d.Text("a"), d.Text("b"))));
        Assert.All(answers, d => Assert.True(d.Number("stops") > d.Number("lower") && d.Number("stops") < d.Number("upper")));
        Assert.All(answers, d => Assert.InRange(d.Number("probabilityBetter"), 0.5, 1));
        var text = Tool.RunWith(Table, asked).Output;
        Assert.Contains("bo allows speeds", text, StringComparison.Ordinal);
        Assert.Contains("28 keepers of 80 frames at 4 speeds", text, StringComparison.Ordinal);
        Assert.DoesNotContain("of 240 frames", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("typical")]
    [InlineData("new-photographer")]
    [InlineData("population")]
    [InlineData("new-setup", "--set", "photographer=ada")]
    [InlineData("this", "--set", "photographer=ada", "--set", "setup=tele")]
    public void Every_question_is_answered_for_whom_it_is_meant(string whose, params string[] set)
    {
        using Folder folder = new();
        var file = folder["fit.json"];
        Assert.Equal(0, Tool.RunWith(Table, ["fit", "-", .. s_nested, "--save", file]).Code);
        string[] meant = ["--whose", whose, .. set, "--json"];
        var rate = Tool.Run(["rate", file, "--at", "1/30", .. meant]);
        Assert.Equal(0, rate.Code);
        Assert.Equal(whose, rate.Json.GetProperty("answers")[0].GetProperty("whose").GetString());
        Assert.Equal(0, Tool.Run(["exposure", file, "--rate", "0.5", .. meant]).Code);
        Assert.Equal(0, Tool.Run(["frames", file, "--at", "1/30", "--keepers", "1", "--assurance", "0.9", .. meant]).Code);
        Assert.Equal(
            Tool.RunWith(Table, ["slowest", "-", .. s_nested, "--rate", "0.5", "--assurance", "0.5", .. meant]).Output,
            Tool.Run(["slowest", file, "--rate", "0.5", "--assurance", "0.5", .. meant]).Output
        );
    }

    [Theory]
    [InlineData("--whose")]
    [InlineData("photographer", "--whose", "this")]
    [InlineData("ada", "--whose", "this", "--set", "photographer=zoe", "--set", "setup=tele")]
    public void What_is_missing_is_asked_for(string remedy, params string[] options)
    {
        var asked = Tool.RunWith(Table, ["rate", "-", .. s_nested, "--at", "1/30", .. options]);
        Assert.Equal(2, asked.Code);
        Assert.Contains(remedy, asked.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("For a typical level:", "photographer", "setup", "typical --set photographer=ada")]
    [InlineData("For a new photographer:", "photographer", "setup", "new-photographer --set setup=tele")]
    [InlineData("For a new setup, photographer ada:", "photographer", "setup", "new-setup --set photographer=ada --set setup=tele")]
    [InlineData("For a new session and burst:", "session", "burst", "new-photographer")]
    [InlineData("For a new burst, session ada:", "session", "burst", "new-setup --day same --set session=ada")]
    public void What_is_new_is_named(string words, string outer, string inner, string whose)
    {
        var table = Table.Replace("photographer", outer, StringComparison.Ordinal).Replace("setup", inner, StringComparison.Ordinal);
        string[] vary = ["--varies", $"{outer}=intercept", "--varies", $"{inner}=intercept", "--within", $"{inner}={outer}"];
        string[] asks = ["rate", "-", "--estimator", "likelihood", .. vary, "--at", "1/30", "--whose", .. whose.Split(' ')];
        var asked = Tool.RunWith(table, asks);
        Assert.StartsWith(words, asked.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("levels", "likelihood")]
    [InlineData("levels", "posterior")]
    [InlineData("level-curves", "likelihood")]
    [InlineData("level-curves", "posterior")]
    public void Levels_are_drawn(string kind, string estimator)
    {
        using Folder folder = new();
        var file = folder["levels.svg"];
        string[] fit = ["--estimator", estimator, "--varies", "photographer=intercept", "--together"];
        var drawn = Tool.RunWith(Table, ["plot", "-", .. fit, "--kind", kind, "--column", "photographer", "--out", file]);
        Assert.Equal((0, ""), (drawn.Code, drawn.Error));
        Assert.Contains("ada", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("300x200", 0)]
    [InlineData("3000x2000", 2)]
    public void Curves_of_levels_have_the_size_asked_for_each(string size, int code)
    {
        using Folder folder = new();
        var file = folder["levels.svg"];
        var drawn = Tool.RunWith(Table, ["plot", "-", .. s_nested, "--kind", "level-curves", "--size", size, "--out", file]);
        Assert.Equal(code, drawn.Code);
        var words = code == 0 ? "viewBox=\"0 0 900 200\"" : "200 to 2000 pixels";
        Assert.Contains(words, code == 0 ? File.ReadAllText(file) : drawn.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_that_does_not_vary_is_not_drawn()
    {
        using Folder folder = new();
        var drawn = Tool.RunWith(Table, ["plot", "-", .. s_nested, "--kind", "levels", "--column", "lens", "--out", folder["levels.png"]]);
        Assert.Equal(2, drawn.Code);
        Assert.Contains("levels of photographer and setup", drawn.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Labels_that_repeat_are_told()
    {
        string[] crossed = [.. s_nested[..^2]];
        var report = Tool.RunWith(Table, ["fit", "-", .. crossed, "--json"]).Json;
        Assert.Contains("labelsRepeat", report.List("curves")[0].List("status").Select(s => s.Text("code")));
    }

    [Fact]
    public void A_parent_may_have_a_parent()
    {
        string[] chain = ["--varies", "setup=exposure", "--within", "setup=photographer", "--within", "photographer=club"];
        var clubs = string.Concat(
            Table.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select((row, i) => $"{(i == 0 ? "club" : "north")},{row}\n")
        );
        var report = Tool.RunWith(clubs, ["fit", "-", "--estimator", "likelihood", .. chain, "--json"]).Json;
        var group = Assert.Single(report.List("curves")[0].List("groups"));
        Assert.Equal("photographer", group.Text("within"));
        Assert.Equal("north · ada", group.List("levels")[0].Text("parent"));
    }

    /// <summary>Invented; what the stabiliser buys differs, and cy has most of it.</summary>
    private static string Stabilised { get; } =
        "photographer,stabiliser_mode,exposure,frames,keepers\n"
        + string.Concat(
            from photographer in new[] { "ada", "bo", "cy" }
            from mode in new[] { "off", "lens" }
            from shot in new[] { ("1/60", 9), ("1/30", 7), ("1/15", 4), ("1/8", 1) }
            let keepers = Math.Clamp(shot.Item2 + (mode == "off" ? 0 : 2 * (photographer[0] - 'a')), 0, 10)
            select $"{photographer},{mode},{shot.Item1},10,{keepers}\n"
        );

    private static readonly string[] s_stabilised =
    [
        "--estimator",
        "likelihood",
        "--term",
        "stabiliser",
        "--varies",
        "photographer=intercept",
        "--varies",
        "photographer=stabiliser",
    ];

    [Fact]
    public void What_the_stabiliser_buys_each_photographer_is_told_and_saved()
    {
        using Folder folder = new();
        var file = folder["fit.json"];
        var report = Tool.RunWith(Stabilised, ["fit", "-", .. s_stabilised, "--json", "--save", file]).Json;
        Assert.Empty(report.Gaps());
        var groups = Assert.Single(report.List("curves")).List("groups");
        Assert.False(groups[0].Has("term"));
        Assert.Equal("stabiliser", groups[1].Text("term"));
        Assert.True(groups[1].GetProperty("sd").Number("stabiliser=lens") > 0);
        var stops = groups[1].List("levels").Select(l => l.List("inStops").Single().Number("stops")).ToArray();
        Assert.True(stops[0] < stops[1] && stops[1] < stops[2]);
        var text = Tool.RunWith(Stabilised, ["fit", "-", .. s_stabilised]).Output;
        Assert.Contains("A typical photographer:", text, StringComparison.Ordinal);
        Assert.Contains("Between 3 photographers what stabiliser buys spreads by", text, StringComparison.Ordinal);
        Assert.Contains("Stabiliser lens instead of off", text, StringComparison.Ordinal);
        string[] compared = ["--between", "stabiliser_mode", "--set", "photographer=cy", "--whose", "this", "--rate", "0.5", "--json"];
        Assert.Equal(
            stops[2],
            Tool.RunWith(Stabilised, ["compare", "-", .. s_stabilised, .. compared]).Json.Answer().Number("stops"),
            1e-9
        );
        string[] cy = ["--set", "photographer=cy", "--set", "stabiliser_mode=lens", "--whose", "this", "--json"];
        Assert.Equal(
            Tool.RunWith(Stabilised, ["rate", "-", .. s_stabilised, "--at", "1/15", .. cy]).Output,
            Tool.Run(["rate", file, "--at", "1/15", .. cy]).Output
        );
    }

    [Fact]
    public void The_posterior_tells_what_the_stabiliser_buys_each_photographer_under_a_prior_of_ones_own()
    {
        string[] fit = ["fit", "-", .. s_stabilised.Skip(2), "--luck", "none", "--ceiling", "one", "--prior", "term=half-normal(0.4)"];
        var report = Tool.RunWith(Stabilised, [.. fit, "--json"]).Json;
        Assert.Empty(report.Gaps());
        Assert.Equal(0.4, report.GetProperty("priors").GetProperty("spreads").GetProperty("term").Number("scale"));
        var groups = Assert.Single(report.List("curves")).List("groups");
        Assert.Equal("stabiliser", groups[1].Text("term"));
        Assert.True(groups[1].GetProperty("sd").Number("stabiliser") > 0);
        var stops = groups[1].List("levels").Select(l => l.List("inStops").Single().Number("stops")).ToArray();
        Assert.True(stops[0] < stops[1] && stops[1] < stops[2]);
        var text = Tool.RunWith(Stabilised, fit).Output;
        Assert.Contains("what a rated stop buys, sd", text, StringComparison.Ordinal);
        Assert.Contains("A typical photographer:", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("names nothing that can vary", "likelihood", "photographer=slope")]
    [InlineData("names nothing that can vary", "likelihood", "photographer=focal")]
    [InlineData("stands alone", "posterior", "photographer=stabiliser")]
    [InlineData("vary twice", "likelihood", "photographer=both")]
    public void What_cannot_vary_is_refused(string words, string estimator, string varies)
    {
        string[] beside = estimator == "posterior" ? [] : ["--varies", "photographer=intercept"];
        string[] fit = ["--term", "stabiliser", .. beside, "--varies", varies];
        var refused = Tool.RunWith(Stabilised, ["fit", "-", "--estimator", estimator, .. fit]);
        Assert.Equal(2, refused.Code);
        Assert.Contains(words, refused.Error, StringComparison.Ordinal);
    }
}
