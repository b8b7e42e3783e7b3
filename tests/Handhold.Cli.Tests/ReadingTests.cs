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
}
