using System.Globalization;
using System.Text;

namespace Handhold.Tables.Tests;

public class CultureTests
{
    private const string Table =
        "exposure;frames;keepers;focal_mm;order;photographer;lamp\n1/60;6;5;35.5;1;Ilı;I\n0,5;4;0;20,7;-2;İs;ı\n1\"3;3;1;1e2;3;Åsa;i\n";

    public static TheoryData<string> Cultures => ["", "sv-SE", "de-DE", "tr-TR", "ar-SA", "fa-IR"];

    [Theory, MemberData(nameof(Cultures))]
    public void A_file_gives_the_same_bits_in_every_culture(string culture)
    {
        var expected = Under("", () => Text.Read(Table));
        var table = Under(culture, () => Text.Read(Table));
        Assert.Equal(expected, table);
        Assert.Equal(expected.Select(Bits), table.Select(Bits));
        Assert.Equal(20.7, table[1].Conditions.FocalLength);
        Assert.Equal(0.5, table[1].Exposure.Seconds);
    }

    [Theory, MemberData(nameof(Cultures))]
    public void A_table_is_written_the_same_in_every_culture(string culture)
    {
        var table = Text.Read(Table);
        Assert.Equal(Under("", () => Text.Write(table)), Under(culture, () => Text.Write(table)));
    }

    [Theory, MemberData(nameof(Cultures))]
    public void Errors_read_the_same_in_every_culture(string culture)
    {
        const string wrong = "exposure;frames;keepers;FOCAL_MM;TITLE\n1/60;5;6;1.5;a\n1/0;1;-1;1.5;a\n60;5;5;-1,5;a\n";
        string Said() => Assert.Throws<TableException>(() => Text.Read(wrong)).Message;
        Assert.Equal(Under("", Said), Under(culture, Said));
    }

    [Theory, MemberData(nameof(Cultures))]
    public void Turkish_letters_do_not_hide_a_known_name(string culture) =>
        Assert.Equal(
            new Conditions { PixelPitch = 4, Crop = 1.5 },
            Under(culture, () => Text.Read("EXPOSURE,KEEPER,PIXEL_UM,CROP\n1/60,TRUE,4,1.5\n"))[0].Conditions
        );

    [Theory]
    [InlineData("1,234.5")]
    [InlineData("1.234,5")]
    [InlineData("1,234,567")]
    public void A_number_with_thousands_separators_is_refused(string number) =>
        Assert.Equal(
            ("focal_mm", number),
            Text.Error($"exposure;keeper;focal_mm\n1/60;yes;{number}\n") is var e ? (e.Column, e.Value) : default
        );

    [Fact]
    public void Between_commas_a_decimal_comma_is_refused()
    {
        foreach (var row in (string[])["\"0,5\",yes,35", "1/60,yes,\"20,7\""])
        {
            Assert.Contains("semicolons or tabs", Text.Error($"exposure,keeper,focal_mm\n{row}\n").Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_count_never_has_a_comma() => Assert.Equal("1,000", Text.Error("exposure\tframes\tkeepers\n1/60\t1,000\t1\n").Value);

    private static string Bits(FrameCell cell)
    {
        var bits = new StringBuilder();
        foreach (var number in (double?[])[cell.Exposure.Seconds, cell.Conditions.FocalLength, cell.Conditions.Order])
        {
            bits.Append(CultureInfo.InvariantCulture, $"{BitConverter.DoubleToInt64Bits(number ?? double.NaN):x} ");
        }
        return bits.ToString();
    }

    private static T Under<T>(string culture, Func<T> work)
    {
        var (before, beforeUi) = (Thread.CurrentThread.CurrentCulture, Thread.CurrentThread.CurrentUICulture);
        try
        {
            Thread.CurrentThread.CurrentCulture = Thread.CurrentThread.CurrentUICulture = new CultureInfo(culture);
            return work();
        }
        finally
        {
            (Thread.CurrentThread.CurrentCulture, Thread.CurrentThread.CurrentUICulture) = (before, beforeUi);
        }
    }
}
