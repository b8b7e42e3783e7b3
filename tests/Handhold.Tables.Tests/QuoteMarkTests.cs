using static Handhold.ShutterSpeed;

namespace Handhold.Tables.Tests;

public class QuoteMarkTests
{
    [Fact]
    public void A_seconds_mark_in_the_middle_of_a_file_loses_no_row()
    {
        var table = Text.Read("exposure,frames,keepers\n1/8,6,6\n2\",6,3\n1/2,6,4\n1\"3,6,5\n4\",6,1\n1/4,6,6\n");
        Assert.Equal([OneOver(8), FromSeconds(2), OneOver(2), FromSeconds(1.3), FromSeconds(4), OneOver(4)], table.Select(c => c.Exposure));
        Assert.Equal(25, table.Keepers);
    }

    [Theory]
    [InlineData("17\" screen", "17\" screen")]
    [InlineData("\"tele\" lens", "\"tele\" lens")]
    [InlineData("the \"tele\"", "the \"tele\"")]
    [InlineData("a\"b\"c", "a\"b\"c")]
    [InlineData("5'7\"", "5'7\"")]
    public void A_quote_mark_elsewhere_than_at_both_ends_is_a_letter(string written, string read) =>
        Assert.Equal(["x", read, "y"], Labels("x", written, "y"));

    [Theory]
    [InlineData("\"a,b\"", "a,b")]
    [InlineData("\"say \"\"cheese\"\"\"", "say \"cheese\"")]
    [InlineData("\"\"\"\"", "\"")]
    [InlineData("  \" a \"  ", " a ")]
    [InlineData("\"two\nlines\"", "two\nlines")]
    [InlineData("\"three\r\nlines\rof it\"", "three\r\nlines\rof it")]
    [InlineData("\"# no comment\n# nor this\"", "# no comment\n# nor this")]
    public void A_quoted_field_may_hold_anything(string written, string read) => Assert.Equal(["x", read, "y"], Labels("x", written, "y"));

    [Fact]
    public void Every_kind_of_line_break_ends_a_row() =>
        Assert.Equal(
            ["a", "b\"", "c", "d"],
            Text.Read("exposure,keeper,setup\r1/60,yes,a\r1/60,yes,b\"\r\n1/60,yes,c\n1/60,yes,d").Select(c => c.Conditions.Setup)
        );

    [Fact]
    public void Lines_looked_at_in_vain_for_a_closing_mark_are_read_again()
    {
        Assert.Equal(["\"a\"\"", "\"b\" c", "d"], Labels("\"a\"\"", "\"b\" c", "d"));
        var table = Text.Read("setup,exposure,keeper\n\"a\"\",1/60,yes\n# a comment\n\"b\" c,1/30,yes\nd,1/15,yes\n");
        Assert.Equal(["\"a\"\"", "\"b\" c", "d"], table.Select(c => c.Conditions.Setup));
    }

    [Fact]
    public void A_quoted_field_over_more_than_three_lines_is_an_error_at_its_first_line()
    {
        var error = Text.Error("exposure,keeper,setup\n1/60,yes,a\n1/60,yes,\"b\n1/30,no,c\n1/15,no,d\n1/8,no,e\"\n");
        Assert.Equal((3, "\"b\\n1/30,no,c\\n1/15,no,d\\n"), (error.Line, error.Value));
        Assert.Contains("more than 3 lines", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_quoted_field_that_never_closes_is_an_error_at_its_line()
    {
        var error = Text.Error("exposure,keeper,setup,lamp\n1/60,yes,\"a\nb\",\"c\n1/60");
        Assert.Equal((3, "\"c\\n1/60"), (error.Line, error.Value));
        Assert.Contains("never closes", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_before_a_field_that_never_closes_are_told_too() =>
        Assert.Equal([2, 4], Text.Errors("exposure,keeper,setup\n1/60,maybe,a\n1/60,yes,b\n1/60,yes,\"c\n").Select(e => e.Line));

    [Fact]
    public void Lines_are_counted_through_quoted_line_breaks() =>
        Assert.Equal(5, Text.Error("exposure,keeper,setup\n1/60,yes,\"a\r\nb\rc\"\n1/60,maybe,d\n").Line);

    /// <summary>What labels so written are read as, the same at either end of their rows.</summary>
    private static IEnumerable<string?> Labels(params string[] written)
    {
        var first = Text.Read("setup,exposure,keeper\n" + string.Concat(written.Select(w => w + ",1/60,yes\n")));
        var last = Text.Read("exposure,keeper,setup\n" + string.Concat(written.Select(w => "1/60,yes," + w + "\n")));
        Assert.Equal(first, last);
        return first.Select(c => c.Conditions.Setup);
    }
}
