using FsCheck.Xunit;

namespace Handhold.Cli.Tests;

public class ReadingTests
{
    [Theory]
    [InlineData("0.95", 0.95)]
    [InlineData("95%", 0.95)]
    [InlineData("95 %", 0.95)]
    [InlineData("99.9%", 0.999)]
    [InlineData("1e-3", 0.001)]
    public void A_share_is_a_fraction_or_per_cent(string text, double share) => Assert.Equal(share, Reading.Share("--rate", text));

    [Property(Replay = "(20250131,7)")]
    public bool Per_cent_is_the_very_number_of_the_fraction(ushort thousandths)
    {
        var n = thousandths % 999 + 1;
        return Reading.Share("--rate", FormattableString.Invariant($"{n / 10}.{n % 10}%"))
            == Reading.Share("--rate", FormattableString.Invariant($"0.{n:000}"));
    }

    [Theory]
    [InlineData("0,5")]
    [InlineData("1.000,5")]
    [InlineData("")]
    [InlineData("Infinity")]
    [InlineData("0x10")]
    [InlineData("½")]
    public void What_is_no_plain_number_is_refused(string text) => Assert.Throws<UsageException>(() => Reading.Number("--rho", text));

    [Theory]
    [InlineData("1 000")]
    [InlineData("1.0")]
    [InlineData("+5")]
    [InlineData("0")]
    [InlineData("99999999999")]
    public void What_is_no_plain_count_is_refused(string text) => Assert.Throws<UsageException>(() => Reading.Count("--keepers", text));

    /// <summary>Invented; twelve frames judged twice, one of them in two ways.</summary>
    private const string Twice = """
        exposure,frames,keepers,kept_twice,kept_once,kept_never
        1/125,6,6,4,0,0
        1/60,6,5,2,1,1
        1/30,6,2,0,0,0
        1/15,6,0,0,0,4
        """;

    [Fact]
    public void The_judge_is_learned_from_frames_judged_twice_unless_told()
    {
        var learned = Tool.RunWith(Twice, ["fit", "-", "--json"]).Json.GetProperty("judging");
        Assert.InRange(learned.Number("sensitivity"), 0.85, 0.999);
        Assert.Equal(12, learned.Number("judgedTwice"));
        Assert.Contains("learned from 12 frames judged twice", Tool.RunWith(Twice, ["fit", "-"]).Output, StringComparison.Ordinal);
        var told = Tool.RunWith(Twice, ["fit", "-", "--sensitivity", "0.9", "--json"]).Json.GetProperty("judging");
        Assert.Equal((0.9, 1), (told.Number("sensitivity"), told.Number("specificity")));
        Assert.False(told.Has("judgedTwice"));
    }
}
