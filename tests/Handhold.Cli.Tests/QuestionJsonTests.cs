using System.Text.Json;

namespace Handhold.Cli.Tests;

public class QuestionJsonTests(Fitted fitted)
{
    private JsonElement Ask(int code, params string[] args)
    {
        var tool = Tool.Run([args[0], fitted.PlainFit, .. args[1..], "--json"]);
        Assert.Equal((code, ""), (tool.Code, tool.Error));
        Assert.Empty(tool.Json.Gaps());
        Assert.Equal(1, tool.Json.Number("schemaVersion"));
        return tool.Json;
    }

    [Fact]
    public void A_rate_is_asked_at_each_speed_in_the_order_given()
    {
        var answers = Ask(0, "rate", "--at", "1/15", "--at", "1/60").List("answers");
        Assert.Equal([1 / 15.0, 1 / 60.0], answers.Select(a => a.Number("at")));
        Assert.True(answers[0].GetProperty("rate").Number("mean") < answers[1].GetProperty("rate").Number("mean"));
        Assert.All(
            answers,
            a =>
                Assert.InRange(
                    a.GetProperty("rate").Number("median"),
                    a.GetProperty("rate").Number("lower"),
                    a.GetProperty("rate").Number("upper")
                )
        );
        Assert.All(answers, a => Assert.True(a.GetProperty("withinTested").GetBoolean()));
    }

    [Fact]
    public void More_than_a_stop_beyond_the_test_there_is_no_answer_unless_asked_for()
    {
        var declined = Ask(1, "rate", "--at", "1").Answer();
        Assert.False(declined.Has("rate") || declined.GetProperty("withinTested").GetBoolean());
        Assert.Contains("outsideTestedRange", declined.List("status").Select(s => s.Text("code")));
        Assert.True(Ask(0, "rate", "--at", "1", "--beyond-tested").Answer().Has("rate"));
    }

    [Fact]
    public void The_exposure_for_a_rate_looks_like_the_half_keeper_exposure()
    {
        var answer = Ask(0, "exposure", "--rate", "50%").Answer();
        var half = fitted.Plain.List("curves")[0].GetProperty("halfKeeperExposure");
        Assert.Equal(0.5, answer.Number("rate"));
        Assert.Subset(answer.Names().ToHashSet(), half.Names().ToHashSet());
        Assert.Equal("bounded", answer.Text("kind"));
    }

    [Fact]
    public void A_rate_above_the_ceiling_is_not_reachable()
    {
        var tool = Tool.RunWith(Tables.Plain, "exposure", "-", "--rate", "0.95", "--ceiling", "0.9", "--luck", "none", "--json");
        Assert.Equal(1, tool.Code);
        Assert.Equal("notReachable", tool.Json.Answer().Text("kind"));
        Assert.False(tool.Json.Answer().Has("seconds"));
    }

    [Fact]
    public void Frames_needed_come_with_bursts_assurance_luck_and_doubt()
    {
        var answer = Ask(0, "frames", "--at", "1/15", "--keepers", "2", "--assurance", "90%", "--bursts-of", "4").Answer();
        Assert.True(answer.GetProperty("reachable").GetBoolean());
        Assert.Equal(answer.Number("frames"), answer.List("bursts").Sum(b => b.GetInt32()));
        Assert.All(answer.List("bursts"), b => Assert.InRange(b.GetInt32(), 1, 4));
        Assert.True(answer.Number("assurance") >= 0.9);
        Assert.Equal(["kind", "value", "origin", "unit", "correlation"], answer.GetProperty("luck").Names());
        Assert.Equal(0, answer.GetProperty("luck").Number("correlation"));
        Assert.Equal("posterior", answer.Text("doubt"));
    }

    [Fact]
    public void Frames_not_judged_give_a_second_answer_and_a_code_where_they_decide()
    {
        var table = "exposure,frames,keepers,unjudged\n1/60,6,6,0\n1/30,4,3,4\n1/15,6,1,0\n";
        string[] frames = ["frames", "-", "--at", "1/30", "--keepers", "1", "--assurance", "95%", .. Fitted.Quick];
        var answer = Tool.RunWith(table, [.. frames, "--json"]).Json.Answer();
        Assert.True(answer.GetProperty("asRejects").Number("frames") > answer.Number("frames"));
        Assert.Contains("restsOnMissing", answer.List("status").Select(s => s.Text("code")));
        Assert.Contains("4 frames not judged", Tool.RunWith(table, frames).Output, StringComparison.Ordinal);
        var rate = Tool.RunWith(table, ["rate", "-", "--at", "1/30", .. Fitted.Quick]).Output;
        Assert.Contains("Were the frames not judged all rejects: at 1/30 s", rate, StringComparison.Ordinal);
    }

    [Fact]
    public void Over_the_budget_the_assurance_attained_is_told()
    {
        var answer = Ask(1, "frames", "--at", "1/8", "--keepers", "3", "--assurance", "99%", "--budget", "3").Answer();
        Assert.False(answer.GetProperty("reachable").GetBoolean() || answer.Has("frames"));
        Assert.Equal("overBudget", answer.Text("reason"));
        Assert.InRange(answer.Number("assurance"), 0, 0.99);
    }

    [Theory]
    [InlineData("--rate", "50%")]
    [InlineData("--frames", "8", "--keepers", "1")]
    public void The_slowest_speed_is_a_mark_of_the_camera(params string[] wanted)
    {
        var answer = Ask(0, ["slowest", .. wanted, "--assurance", "80%", "--marks", "full"]).Answer();
        Assert.True(answer.GetProperty("found").GetBoolean());
        Assert.Contains(ShutterSpeed.FromSeconds(answer.Number("seconds")), MarkedSpeeds.Series(Marks.Full));
        Assert.True(answer.Number("assurance") >= 0.8);
    }

    [Fact]
    public void Sides_are_compared_in_byte_order_second_minus_first()
    {
        var answer = Tool.Run("compare", fitted.LensFit, "--between", "setup", "--rate", "50%", "--json").Json.Answer();
        Assert.Equal(("200 mm", "50 mm"), (answer.Text("a"), answer.Text("b")));
        Assert.Equal(["photographer", "criterion"], answer.GetProperty("key").Names());
        Assert.True(answer.Number("stops") > 0, "the short lens allows slower speeds");
        Assert.InRange(answer.Number("stops"), answer.Number("lower"), answer.Number("upper"));
        Assert.InRange(answer.Number("probabilityBetter"), 0.5, 1);
    }

    [Fact]
    public void Set_leaves_the_curves_that_have_the_value()
    {
        var answer = Tool.Run("rate", fitted.LensFit, "--at", "1/60", "--set", "setup=50 mm", "--json").Json.Answer();
        Assert.Equal("50 mm", answer.GetProperty("key").Text("setup"));
    }
}
