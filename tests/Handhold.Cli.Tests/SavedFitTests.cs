namespace Handhold.Cli.Tests;

public class SavedFitTests(Fitted fitted)
{
    [Theory]
    [InlineData("rate", "--at", "1/30")]
    [InlineData("exposure", "--rate", "70%")]
    [InlineData("frames", "--at", "1/30", "--keepers", "1", "--assurance", "90%")]
    public void A_saved_fit_answers_as_its_table_does_to_the_last_digit(params string[] question)
    {
        string[] Asked(string file, params string[] more) => [question[0], file, .. question[1..], .. more, "--json"];
        Assert.Equal(Tool.Run(Asked(fitted.LensTable, Fitted.Quick)).Output, Tool.Run(Asked(fitted.LensFit)).Output);
    }

    [Fact]
    public void A_saved_fit_reports_what_was_saved() =>
        Assert.Equal(File.ReadAllText(fitted.LensFit), Tool.Run("fit", fitted.LensFit, "--json").Output.ReplaceLineEndings("\n"));

    [Fact]
    public void A_saved_fit_is_read_from_standard_input_too() =>
        Assert.Equal(0, Tool.RunWith(File.ReadAllText(fitted.PlainFit), "rate", "-", "--at", "1/30").Code);

    [Theory]
    [InlineData("--ceiling", "one")]
    [InlineData("--level", "90%")]
    [InlineData("--together")]
    public void Options_of_fitting_are_wrong_usage_with_a_saved_fit(params string[] option)
    {
        var tool = Tool.Run(["rate", fitted.PlainFit, "--at", "1/30", .. option]);
        Assert.Equal((2, ""), (tool.Code, tool.Output));
        Assert.Contains(option[0], tool.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fit_without_its_counts_cannot_be_asked_again()
    {
        var report = Tool.RunWith(Tables.Plain, ["fit", "-", "--without-cells", "--json", .. Fitted.Quick]).Output;
        var tool = Tool.RunWith(report, "rate", "-", "--at", "1/30", "--json");
        Assert.Equal(3, tool.Code);
        Assert.Contains("cells", tool.Json.List("errors")[0].Text("message"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fit_from_the_future_is_refused_naming_both_versions()
    {
        var future = File.ReadAllText(fitted.PlainFit).Replace("\"schemaVersion\": 1", "\"schemaVersion\": 7", StringComparison.Ordinal);
        var tool = Tool.RunWith(future, "fit", "-");
        Assert.Equal(3, tool.Code);
        Assert.Contains("version 7", tool.Error, StringComparison.Ordinal);
        Assert.Contains("version 1", tool.Error, StringComparison.Ordinal);
    }
}
