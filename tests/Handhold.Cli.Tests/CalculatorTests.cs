namespace Handhold.Cli.Tests;

public class CalculatorTests
{
    /// <summary>One keeper at 95 %: the numbers are those of 1 - (1-p)^n and of the beta-binomial mass at zero.</summary>
    [Theory]
    [InlineData("0.3", "0", 9)]
    [InlineData("30%", "0.1", 15)]
    [InlineData("0.5", "0", 5)]
    [InlineData("1", "0", 1)]
    public void Frames_for_one_keeper(string rate, string rho, int frames)
    {
        var answer = Tool.Run("frames", "--known-rate", rate, "--rho", rho, "--keepers", "1", "--assurance", "95%", "--json").Json.Answer();
        Assert.Equal(frames, answer.Number("frames"));
        Assert.Equal(("none", "given"), (answer.Text("doubt"), answer.GetProperty("luck").Text("origin")));
    }

    [Fact]
    public void Without_rho_independence_is_assumed_and_said_so()
    {
        var luck = Tool.Run("frames", "--known-rate", "0.3", "--keepers", "1", "--assurance", "95%", "--json")
            .Json.Answer()
            .GetProperty("luck");
        Assert.Equal(("none", 0.0, "assumed"), (luck.Text("kind"), luck.Number("value"), luck.Text("origin")));
    }

    [Fact]
    public void A_rate_of_nothing_is_over_any_budget()
    {
        var tool = Tool.Run("frames", "--known-rate", "0", "--keepers", "1", "--assurance", "95%", "--json");
        Assert.Equal(1, tool.Code);
        Assert.False(tool.Json.Answer().GetProperty("reachable").GetBoolean());
    }

    [Fact]
    public void People_get_a_sentence()
    {
        var tool = Tool.Run("frames", "--known-rate", "0.3", "--keepers", "1", "--assurance", "95%");
        Assert.Equal((0, ""), (tool.Code, tool.Error));
        Assert.Contains("9 frames", tool.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("frames", "--rho", "0.1", "--keepers", "1", "--assurance", "95%")]
    [InlineData("frames", "--known-rate", "0.3", "--rho", "1", "--keepers", "1", "--assurance", "95%")]
    [InlineData("frames", "--known-rate", "0.3", "--keepers", "0", "--assurance", "95%")]
    [InlineData("frames", "--known-rate", "0.3", "--at", "1/8", "--keepers", "1", "--assurance", "95%")]
    [InlineData("frames", "table.csv", "--known-rate", "0.3", "--keepers", "1", "--assurance", "95%")]
    [InlineData("frames", "--keepers", "1", "--assurance", "95%")]
    public void What_the_calculator_cannot_use_is_wrong_usage(params string[] args) => Assert.Equal(2, Tool.Run(args).Code);
}
