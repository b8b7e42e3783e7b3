using System.Globalization;

namespace Handhold.Cli.Tests;

public class PlainTextTests(Fitted fitted)
{
    [Fact]
    public void Redirected_text_has_no_control_codes_and_no_trailing_blanks() =>
        Assert.All(
            fitted.Screens,
            screen =>
            {
                Assert.DoesNotContain(screen.Output, c => char.IsControl(c) && c != '\n');
                Assert.All(screen.Output.Split('\n'), line => Assert.Equal(line.TrimEnd(), line));
                Assert.Equal("", screen.Error);
            }
        );

    [Fact]
    public void Redirected_sentences_are_one_line_each() =>
        Assert.All(fitted.Screens, screen => Assert.Contains(screen.Output.Split('\n'), line => line.Length > 100));

    [Fact]
    public void In_a_terminal_text_is_wrapped_at_its_width()
    {
        using StringWriter output = new();
        CommandLine.Run(["rate", fitted.LensFit, "--at", "1/60"], new Desk(TextReader.Null, output, TextWriter.Null) { Width = 72 });
        Assert.All(output.ToString().Split('\n'), line => Assert.InRange(line.Length, 0, 72));
    }

    [Fact]
    public void Every_screen_names_counts_criterion_and_estimator() =>
        Assert.All(
            fitted.Screens,
            screen =>
            {
                Assert.Contains("keepers of", screen.Output, StringComparison.Ordinal);
                Assert.Contains("Judged on a print", screen.Output, StringComparison.Ordinal);
                Assert.Contains("posterior", screen.Output, StringComparison.Ordinal);
            }
        );

    [Fact]
    public void Long_lenses_come_with_a_caution_for_the_arms()
    {
        Assert.Contains("heavy", Tool.Run("rate", fitted.LensFit, "--at", "1/60").Output, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "heavy",
            Tool.Run("rate", fitted.LensFit, "--at", "1/60", "--set", "setup=50 mm").Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Labels_cannot_command_the_terminal()
    {
        var table = "exposure,frames,keepers,setup\n1/60,6,6,\u001b[31mred\n1/30,6,2,\u001b[31mred\n";
        var tool = Tool.RunWith(table, ["fit", "-", .. Fitted.Quick]);
        Assert.DoesNotContain('\u001b', tool.Output + tool.Error);
    }

    [Fact]
    public void A_german_machine_prints_the_same()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new("de-DE");
            Assert.All(fitted.Screens, screen => Assert.Equal(screen.Output, Tool.Run(screen.Args).Output));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
