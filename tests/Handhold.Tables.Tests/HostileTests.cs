using System.Diagnostics;
using System.Text;

namespace Handhold.Tables.Tests;

public class HostileTests
{
    private const string Header = "exposure,keeper,setup\n";

    [Fact]
    public void A_huge_cell_is_refused_by_its_limit()
    {
        var error = Text.Error(Header + "1/60,yes," + new string('x', 10_001) + "\n1/60,yes,a\n");
        Assert.Equal((2, "setup"), (error.Line, error.Column));
        Assert.Contains("10000", error.Message, StringComparison.Ordinal);
        Assert.Contains("MaxFieldLength", error.Remedy, StringComparison.Ordinal);
        Assert.Single(Text.Read(Header + "1/60,yes," + new string('x', 10_000)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\"")]
    public void A_huge_row_is_refused_by_its_limit(string quote)
    {
        using var endless = new Endless(Header + "1/60,yes," + quote, 'x');
        var error = Refused(endless);
        Assert.Equal(2, error.Line);
        Assert.Contains("MaxRowLength", error.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData('\n')]
    [InlineData('\r')]
    public void A_huge_file_is_refused_by_its_limit(char letter)
    {
        using var endless = new Endless(Header, letter);
        Assert.Contains("MaxCharacters", Refused(endless, new() { MaxCharacters = 1 << 20 }).Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1001)]
    [InlineData(500_000)]
    public void Too_many_columns_are_refused_by_their_limit(int columns)
    {
        Assert.Contains("MaxColumns", Text.Error(string.Join(',', Enumerable.Repeat("a", columns))).Remedy, StringComparison.Ordinal);
        Assert.Contains("MaxColumns", Text.Error(Header + new string(',', columns - 1)).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_many_rows_are_refused_by_their_limit()
    {
        var error = Text.Error(Header + "1/60,yes,a\n1/60,yes,a\n1/60,yes,a\n", new() { MaxRows = 2 });
        Assert.Equal(4, error.Line);
        Assert.Contains("MaxRows", error.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_that_is_reached_and_not_passed_is_kept() =>
        Assert.Equal(
            2,
            Text.Read(
                Header + "1/60,yes,a\n1/60,yes,a\n",
                new()
                {
                    MaxRows = 2,
                    MaxColumns = 3,
                    MaxFieldLength = 8,
                    MaxRowLength = Header.Length,
                    MaxCharacters = Header.Length + 22,
                }
            ).Count
        );

    [Fact]
    public void Nuls_are_refused() => Assert.Equal(2, Text.Error(Header + "1/60,yes,\0\0\0\n1/60,yes,a\n").Line);

    [Theory]
    [InlineData("\"")]
    [InlineData("\"\"")]
    [InlineData("\"\"\"")]
    [InlineData("\",")]
    [InlineData("\"a\",")]
    [InlineData("\"a,\"b,")]
    [InlineData("\"a\"\"\n")]
    [InlineData("\"a\nb\nc\",")]
    [InlineData("a\"\n")]
    [InlineData("\"a\n\",")]
    [InlineData(",")]
    [InlineData("\r")]
    [InlineData("#\"\n")]
    public void Nothing_takes_long_to_refuse(string pattern)
    {
        var clock = Stopwatch.StartNew();
        IsRefused(Header + "1/60,yes," + string.Concat(Enumerable.Repeat(pattern, 400_000 / pattern.Length)));
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10), $"{clock.Elapsed}");
    }

    [Fact]
    public void Whatever_stands_in_a_file_is_read_or_refused()
    {
        const string letters = "1/60,;\t\"\"\"\r\n\n,,yes'#=-a\0\uFEFF\uFFFD\u0661 ";
        var seed = 20250131u;
        for (var run = 0; run < 20_000; run++)
        {
            var text = new StringBuilder(Header);
            for (var i = 0; i < 40; i++)
            {
                seed = (seed * 1664525) + 1013904223;
                text.Append(letters[(int)(seed >> 8) % letters.Length]);
            }
            IsRefused(text.ToString());
        }
    }

    private static bool IsRefused(string text)
    {
        try
        {
            Text.Read(text);
            return false;
        }
        catch (TableException refused)
        {
            return refused.Errors.Length is >= 1 and <= 20 ? true : throw new InvalidOperationException("1 to 20 errors", refused);
        }
    }

    private static TableError Refused(TextReader text, TableOptions? options = null) =>
        Assert.Single(
            Assert
                .Throws<TableException>(() =>
                    TableReader.Read(text, "museum.csv", options, cancellation: TestContext.Current.CancellationToken)
                )
                .Errors
        );

    /// <summary>A beginning, then one letter for ever.</summary>
    private sealed class Endless(string beginning, char letter) : TextReader
    {
        private long _at;

        public override int Read(char[] buffer, int index, int count)
        {
            for (var i = 0; i < count; i++, _at++)
            {
                buffer[index + i] = _at < beginning.Length ? beginning[(int)_at] : letter;
            }
            return count;
        }
    }
}
