namespace Handhold.Cli.Tests;

public class SimulateTests
{
    private static readonly string[] s_speeds = ["--at", "1/125", "--at", "1/30", "--at", "1/8"];

    [Fact]
    public void Invented_frames_are_a_table_that_can_be_fitted()
    {
        using Folder folder = new();
        var made = Tool.Run(["simulate", "--half", "1/30", .. s_speeds, "--days", "2", "--out", folder["frames.csv"]]);
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Contains("36 invented frames", made.Output, StringComparison.Ordinal);
        Assert.Equal(0, Tool.Run("rate", folder["frames.csv"], "--at", "1/30", "--json").Code);
    }

    [Fact]
    public void The_same_seed_gives_the_same_frames_and_another_seed_others()
    {
        string Frames(string seed) => Tool.Run(["simulate", "--half", "1/30", .. s_speeds, "--seed", seed]).Output;
        Assert.Equal(Frames("7"), Frames("7"));
        Assert.NotEqual(Frames("7"), Frames("8"));
        Assert.StartsWith("exposure,", Frames("7"), StringComparison.Ordinal);
    }

    [Fact]
    public void Hands_in_motion_shoot_too() =>
        Assert.Equal(0, Tool.Run(["simulate", "--motion", "--focal", "85", "--subject-moves", "0.2", .. s_speeds]).Code);

    [Fact]
    public void Every_curve_of_a_saved_fit_shoots_under_its_own_name()
    {
        using Folder folder = new();
        Assert.Equal(0, Tool.Run("fit", folder.Write("table.csv", Tables.TwoLenses), "--save", folder["fit.json"]).Code);
        var made = Tool.Run(["simulate", folder["fit.json"], .. s_speeds]);
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Equal(0, Tool.Run("fit", folder.Write("made.csv", made.Output)).Code);
    }

    [Theory]
    [InlineData("--half is missing", "simulate", "--at", "1/30")]
    [InlineData("--at is missing", "simulate", "--half", "1/30")]
    [InlineData("--focal needs --motion", "simulate", "--half", "1/30", "--at", "1/30", "--focal", "85")]
    [InlineData("--half belongs to a curve", "simulate", "--motion", "--half", "1/30", "--at", "1/30")]
    [InlineData("--steepness 0", "simulate", "--half", "1/30", "--steepness", "0", "--at", "1/30")]
    public void What_cannot_be_invented_is_said(string said, params string[] arguments)
    {
        var tool = Tool.Run(arguments);
        Assert.Equal(2, tool.Code);
        Assert.Contains(said, tool.Error, StringComparison.Ordinal);
    }
}
