using System.Text;

namespace Handhold.Cli.Tests;

public class ExitCodeTests
{
    [Fact]
    public void A_report_with_statuses_is_complete() =>
        Assert.Equal(0, Tool.RunWith("exposure,frames,keepers\n1/60,4,4\n", ["fit", "-", .. Fitted.Quick]).Code);

    [Fact]
    public void A_file_that_is_not_there_is_bad_input_and_named()
    {
        var tool = Tool.Run("fit", "nowhere.csv", "--json");
        var error = Assert.Single(tool.Json.List("errors"));
        Assert.Equal((3, "fileNotFound", "nowhere.csv", ""), (tool.Code, error.Text("code"), error.Text("file"), tool.Error));
    }

    [Fact]
    public void Bad_cells_are_told_with_line_column_value_and_remedy()
    {
        var tool = Tool.RunWith("exposure,frames,keepers\n1/0,6,6\n1/60,6,7\n", "fit", "-", "--json");
        Assert.Equal((3, ""), (tool.Code, tool.Error));
        Assert.Equal(["schemaVersion", "errors"], tool.Json.Names());
        var errors = tool.Json.List("errors");
        Assert.Equal((2.0, "exposure", "1/0"), (errors[0].Number("line"), errors[0].Text("column"), errors[0].Text("value")));
        Assert.Equal(3, errors[1].Number("line"));
        Assert.All(errors, e => Assert.True(e.Has("remedy") && e.Has("message") && e.Has("code") && e.Has("file")));
    }

    [Fact]
    public void Rows_that_make_no_curve_are_bad_input()
    {
        var tool = Tool.RunWith("exposure,keeper\n1/60,\n1/30,\n", "fit", "-", "--json");
        Assert.Equal(3, tool.Code);
        Assert.NotEmpty(tool.Json.List("errors"));
    }

    [Fact]
    public void For_people_errors_go_to_standard_error()
    {
        var tool = Tool.RunWith("exposure,frames,keepers\n1/0,6,6\n", "fit", "-");
        Assert.Equal((3, ""), (tool.Code, tool.Output));
        Assert.Contains("line 2, column exposure, `1/0`", tool.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Cancelled_work_ends_with_130_and_no_report()
    {
        using StringReader input = new(Tables.Plain);
        using StringWriter output = new();
        using StringWriter error = new();
        var code = CommandLine.Run(["fit", "-", "--json"], new Desk(input, output, error, new CancellationToken(canceled: true)));
        Assert.Equal((130, ""), (code, output.ToString()));
    }

    [Fact]
    public void A_fault_asks_to_be_reported_and_shows_no_stack()
    {
        using StringReader input = new("");
        using Broken output = new();
        using StringWriter error = new();
        var code = CommandLine.Run(["frames", "--known-rate", "0.5", "--keepers", "1", "--assurance", "95%"], input, output, error);
        Assert.Equal(70, code);
        Assert.Contains("report it", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(" at Handhold", error.ToString(), StringComparison.Ordinal);
    }

    private sealed class Broken : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void WriteLine(string? value) => throw new InvalidOperationException("No ink.");
    }
}
