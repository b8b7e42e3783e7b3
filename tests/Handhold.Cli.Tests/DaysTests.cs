namespace Handhold.Cli.Tests;

public class DaysTests
{
    private const string TwoDays = """
        exposure,frames,keepers,session
        1/60,8,8,mon
        1/30,8,7,mon
        1/15,8,4,mon
        1/60,8,6,tue
        1/30,8,2,tue
        1/15,8,0,tue
        """;

    private static readonly string[] s_quick = ["--ceiling", "one"];

    [Fact]
    public void Days_list_their_luck_and_the_trend_over_them()
    {
        var tool = Tool.RunWith(TwoDays, ["days", "-", "--json", .. s_quick]);
        Assert.Equal((0, ""), (tool.Code, tool.Error));
        Assert.Empty(tool.Json.Gaps());
        var days = tool.Json.Answer().List("days");
        Assert.Equal(["mon", "tue"], days.Select(d => d.Text("session")));
        Assert.True(days[0].Number("stops") > 0 && days[1].Number("stops") < 0);
        Assert.All(days, d => Assert.InRange(d.Number("stops"), d.Number("lower"), d.Number("upper")));
        Assert.True(tool.Json.Answer().GetProperty("trend").Number("stops") < 0);
        var said = Tool.RunWith(TwoDays, ["days", "-", .. s_quick]).Output;
        Assert.Contains("From mon to tue", said, StringComparison.Ordinal);
        Assert.Contains("19 of 24", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Today_is_the_session_that_is_set()
    {
        double Rate(params string[] day) =>
            Tool.RunWith(TwoDays, ["rate", "-", "--at", "1/30", "--json", .. s_quick, .. day])
                .Json.Answer()
                .GetProperty("rate")
                .Number("mean");
        Assert.True(Rate("--day", "same", "--set", "session=tue") < Rate() && Rate() < Rate("--day", "same", "--set", "session=mon"));
    }

    [Theory]
    [InlineData("mon or tue", "--day", "same")]
    [InlineData("not tested on a day called wed", "--day", "same", "--set", "session=wed")]
    [InlineData("--day same", "--set", "session=mon")]
    public void A_day_that_is_not_clear_is_wrong_usage(string remedy, params string[] options)
    {
        var tool = Tool.RunWith(TwoDays, ["rate", "-", "--at", "1/30", .. s_quick, .. options]);
        Assert.Equal((2, ""), (tool.Code, tool.Output));
        Assert.Contains(remedy, tool.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_photographers_vary_a_day_is_a_photographers_and_the_trend_is_for_all()
    {
        var table =
            "photographer,session,exposure,frames,keepers\n"
            + string.Concat(
                from photographer in new[] { "ada", "bo", "cy" }
                from day in Enumerable.Range(1, 4)
                from speed in new[] { 125, 60, 30, 15, 8 }
                let half = -6 + 0.4 * (photographer[0] - 'a') + 0.45 * day
                let keepers = (int)Math.Round(10 / (1 + Math.Exp(-1.6 * (half + Math.Log2(speed)))))
                select $"{photographer},day {day},1/{speed},10,{keepers}\n"
            );
        string[] together = ["--varies", "photographer=intercept", .. s_quick];
        var tool = Tool.RunWith(table, ["days", "-", "--json", .. together]);
        Assert.Equal((0, ""), (tool.Code, tool.Error));
        var days = tool.Json.Answer().List("days");
        Assert.Equal(["ada day 1", "ada day 2"], days.Take(2).Select(d => $"{d.Text("photographer")} {d.Text("session")}"));
        Assert.Equal(12, days.Length);
        Assert.InRange(tool.Json.Answer().GetProperty("trend").Number("stops"), 0.9, 1.6);
        Assert.Contains(
            "one change for all photographers",
            Tool.RunWith(table, ["days", "-", .. together]).Output,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("ada")]
    [InlineData("ada", "bo")]
    public void A_trend_whose_points_are_too_few_is_not_told(params string[] photographers)
    {
        var rows = TwoDays.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var both = string.Join(
            '\n',
            [rows[0] + ",photographer", .. rows[1..].SelectMany(row => photographers.Select(p => $"{row.TrimEnd()},{p}"))]
        );
        var answer = Tool.RunWith(both, ["days", "-", "--json", "--varies", "photographer=intercept", .. s_quick]).Json.Answer();
        if (answer.Has("trend"))
            Assert.True(answer.GetProperty("trend").Number("stops") < 0);
        else
            Assert.Contains("approximate", answer.List("status").Select(s => s.Text("code")));
    }

    [Fact]
    public void Without_luck_there_are_no_days_to_ask() =>
        Assert.Equal(2, Tool.RunWith(TwoDays, "days", "-", "--estimator", "likelihood").Code);
}
