using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Handhold.Tables.Tests;

public class SpeedTests
{
    [Theory]
    [InlineData("")]
    [InlineData("\"")]
    public void Two_hundred_thousand_rows_are_read_whole_and_their_time_is_told(string quote)
    {
        const int rows = 200_000;
        var text = new StringBuilder(
            "exposure,keeper,photographer,setup,session,burst,burst_position,focal_eq_mm,stabiliser_stops,stabiliser_mode,criterion\n"
        );
        for (var i = 0; i < rows; i++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"1/{8 + i % 9},{(i % 3 == 0 ? "yes" : "no")},Robin,{quote}room 24 mm{quote},visit {i / 1000},{i / 5},{1 + i % 5},24,0,off,pixel\n"
            );
        }
        var clock = Stopwatch.StartNew();
        Assert.Equal(rows, Text.Read(text.ToString()).Frames);
        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{rows} rows in {clock.Elapsed.TotalSeconds:0.00} s")
        );
    }
}
