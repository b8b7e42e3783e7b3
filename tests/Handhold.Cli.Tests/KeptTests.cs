namespace Handhold.Cli.Tests;

public sealed class KeptTests(Fitted fitted) : IDisposable
{
    private readonly Folder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string Plans() =>
        _folder.Write(
            "plans.json",
            Tool.Run("frames", fitted.PlainFit, "--at", "1/30", "--at", "1/15", "--keepers", "1", "--assurance", "90%", "--json").Output
        );

    private string Shot(string rows) => _folder.Write("shot.csv", "exposure,frames,keepers,session\n" + rows);

    [Fact]
    public void What_came_home_stands_beside_what_was_promised()
    {
        var plans = Plans();
        var frames = SavedPlans.Read(File.ReadAllText(plans)).Select(p => p.Frames).ToArray();
        var shot = Shot($"1/30,{frames[0]},1,sat\n1/15,{frames[1]},0,sun\n");
        var kept = Tool.Run("kept", plans, shot, "--json");
        Assert.Equal((0, ""), (kept.Code, kept.Error));
        Assert.Empty(kept.Json.Gaps());
        var report = kept.Json.GetProperty("kept");
        Assert.Equal((2, 2, 1, 0.5), (report.Number("plans"), report.Number("decided"), report.Number("kept"), report.Number("share")));
        Assert.InRange(report.Number("promised"), 0.9, 1);
        Assert.InRange(report.Number("chanceOfAsFew"), 0, 0.2);
        Assert.Equal(["kept", "broken"], report.List("shoots").Select(s => s.Text("outcome")));
        Assert.All(report.List("shoots"), s => Assert.InRange(s.Number("place"), 0, 1));
        var said = Tool.Run("kept", plans, shot).Output;
        Assert.Contains("1 plan of 2 was kept: 50 %", said, StringComparison.Ordinal);
        Assert.Contains($"0 of {frames[1]}", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_fit_is_made_again_with_the_new_frames_and_the_plans_with_it()
    {
        var (plans, saved) = (Plans(), _folder["new.json"]);
        var kept = Tool.Run(
            "kept",
            plans,
            Shot("1/30,60,0,sat\n"),
            "--fit",
            fitted.PlainFit,
            "--save",
            saved,
            "--out",
            _folder["kept.png"],
            "--json"
        );
        Assert.Equal((0, ""), (kept.Code, kept.Error));
        var again = Assert.Single(kept.Json.List("again"));
        Assert.False(
            again.GetProperty("reachable").GetBoolean() && again.Number("frames") <= SavedPlans.Read(File.ReadAllText(plans))[0].Frames
        );
        Assert.Equal(90, Tool.Run("fit", saved, "--json").Json.GetProperty("data").Number("frames"));
        Assert.True(File.Exists(_folder["kept.png"]));
    }

    [Fact]
    public void Without_a_frame_of_any_plan_there_is_no_answer()
    {
        var kept = Tool.Run("kept", Plans(), Shot("1/1000,6,6,sat\n"), "--json");
        Assert.Equal(1, kept.Code);
        Assert.Equal([1.0, 2], kept.Json.GetProperty("kept").List("notShot").Select(n => n.GetDouble()));
    }

    [Fact]
    public void A_table_or_a_fit_in_place_of_plans_is_told_apart()
    {
        Assert.Equal(2, Tool.Run("kept", fitted.PlainTable, fitted.PlainTable).Code);
        var fit = Tool.Run("kept", fitted.PlainFit, fitted.PlainTable, "--json");
        Assert.Equal((3, "badPlans"), (fit.Code, fit.Json.List("errors")[0].Text("code")));
        Assert.Contains("handhold frames", fit.Json.List("errors")[0].Text("message"), StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run("kept", Plans(), fitted.PlainTable, "--save", _folder["x.json"]).Code);
    }
}
