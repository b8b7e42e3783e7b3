using System.Text;

namespace Handhold.Tables.Tests;

public class EncodingTests
{
    private const string Table = "exposure,keeper,setup\n1/60,yes,Åsas 50 µm 時計 𝄞\n";

    public static TheoryData<string, bool> Encodings =>
        new()
        {
            { "utf-8", false },
            { "utf-8", true },
            { "utf-16", true },
            { "utf-16BE", true },
            { "utf-32", true },
        };

    [Theory, MemberData(nameof(Encodings))]
    public void Unicode_is_read_by_its_byte_order_mark(string name, bool marked)
    {
        var encoding = Encoding.GetEncoding(name);
        using var stream = new MemoryStream([.. marked ? encoding.GetPreamble() : [], .. encoding.GetBytes(Table)]);
        var table = TableReader.Read(stream, "museum.csv", cancellation: TestContext.Current.CancellationToken);
        Assert.Equal("Åsas 50 µm 時計 𝄞", table[0].Conditions.Setup);
        Assert.True(stream.CanRead);
    }

    [Fact]
    public void A_byte_order_mark_in_text_is_no_letter() => Assert.Single(Text.Read("\uFEFF" + Table));

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    public void Utf16_without_its_mark_is_refused_by_name(string name)
    {
        var error = Error(Encoding.GetEncoding(name).GetBytes(Table));
        Assert.Equal(1, error.Line);
        Assert.Contains("UTF-16 without a byte order mark", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_not_utf8_are_refused_at_their_line()
    {
        var error = Error(Encoding.Latin1.GetBytes("exposure,keeper,setup\n1/60,yes,a\n1/60,yes,Åsa\n"));
        Assert.Equal(3, error.Line);
        Assert.Contains("not UTF-8", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_not_utf8_harm_no_comment()
    {
        using var stream = new MemoryStream(Encoding.Latin1.GetBytes("# Åsa\n" + "exposure,keeper\n1/60,yes\n"));
        Assert.Single(TableReader.Read(stream, "museum.csv", cancellation: TestContext.Current.CancellationToken));
    }

    private static TableError Error(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return Assert.Single(
            Assert
                .Throws<TableException>(() => TableReader.Read(stream, "museum.csv", cancellation: TestContext.Current.CancellationToken))
                .Errors
        );
    }
}
