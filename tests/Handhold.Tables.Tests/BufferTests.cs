using System.Text;

namespace Handhold.Tables.Tests;

public class BufferTests
{
    private const string Rows =
        "1/60,yes,\"a, \"\"b\"\"\r\nc\",x\r\n2\",no,7\" wide,\"y\"\r\n# comment \"\r\n1/8,,\"d\"\"\" , z\r1/4,0,\"e\" f,\n\n1/2,1,𝄞,Å\n";

    private static readonly FrameTable s_expected = Text.Read("exposure,keeper,setup,lamp\n" + Rows);

    [Fact]
    public void A_table_reads_the_same_wherever_a_buffer_ends_in_it()
    {
        // Pads with comment lines and a long label so that every character of the rows lies once on each power of two up to 64 Ki.
        foreach (var size in (int[])[1024, 4096, 16_384, 32_768, 65_536])
        {
            for (var offset = -4; offset <= Rows.Length + 4; offset++)
            {
                Assert.Equal(s_expected, Padded(size - offset));
            }
        }
    }

    [Fact]
    public void A_table_reads_the_same_however_few_characters_come_at_a_time()
    {
        for (var most = 1; most <= 40; most++)
        {
            using var text = new Trickle("exposure,keeper,setup,lamp\n" + Rows, most);
            Assert.Equal(s_expected, TableReader.Read(text, "museum.csv", cancellation: TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public void Line_numbers_hold_wherever_a_buffer_ends()
    {
        for (var label = 16_000; label < 16_400; label++)
        {
            var text = $"exposure,keeper,setup,lamp\n1/60,yes,{new string('x', label)},\n{Rows}1/60,maybe,,\n";
            Assert.Equal(11, Text.Error(text, s_wide).Line);
        }
    }

    private static readonly TableOptions s_wide = new() { MaxFieldLength = 100_000 };

    /// <summary>The rows behind a first row so long that they begin at this offset; without that row.</summary>
    private static FrameTable Padded(int offset)
    {
        const string before = "exposure,keeper,setup,lamp\n1/1,yes,";
        const string after = ",\n";
        var text = before + new string('x', offset - before.Length - after.Length) + after + Rows;
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        var table = TableReader.Read(stream, "museum.csv", s_wide, cancellation: TestContext.Current.CancellationToken);
        return FrameTable.Create([.. table.Skip(1)]);
    }

    private sealed class Trickle(string text, int most) : TextReader
    {
        private int _at;

        public override int Read(char[] buffer, int index, int count)
        {
            var n = Math.Min(Math.Min(count, most), text.Length - _at);
            text.CopyTo(_at, buffer, index, n);
            _at += n;
            return n;
        }
    }
}
