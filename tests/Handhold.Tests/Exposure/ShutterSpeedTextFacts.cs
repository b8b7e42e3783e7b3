using System.Globalization;
using FsCheck.Xunit;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Exposure;

public class ShutterSpeedTextFacts
{
    public static TheoryData<string, double> Spellings =>
        new()
        {
            { "1/60", 1 / 60.0 },
            { "1/60 s", 1 / 60.0 },
            { "1/60s", 1 / 60.0 },
            { "  1/60\u00a0s ", 1 / 60.0 },
            { "1/60 sec", 1 / 60.0 },
            { "1/60 sec.", 1 / 60.0 },
            { "1 / 60", 1 / 60.0 },
            { "10/600", 1 / 60.0 },
            { "1/60.55", 1 / 60.55 },
            { "300/10", 30 },
            { "0.5", 0.5 },
            { ".5", 0.5 },
            { "1.3s", 1.3 },
            { "1.3 S", 1.3 },
            { "2\"", 2 },
            { "0\"5", 0.5 },
            { "1\"3", 1.3 },
            { "2\u2033", 2 },
            { "30", 30 },
            { "1e-3", 1e-3 },
            { "5E-324", double.Epsilon },
            { "1.7976931348623157E+308", double.MaxValue },
        };

    public static TheoryData<string?, string> Refusals =>
        new()
        {
            { null, "'' is empty" },
            { "  ", "is empty" },
            { "0,5", "decimal comma" },
            { "1/60,5", "decimal comma" },
            { "1,000", "decimal comma" },
            { "1/0", "divides by zero" },
            { "0/0", "divides by zero" },
            { "-1/60", "is negative" },
            { "\u22121/60", "is negative" },
            { "1/-60", "is not one positive number over another" },
            { "1/60/2", "more than one slash" },
            { "0", "is not above zero" },
            { "0/60", "is not above zero" },
            { "1e-400", "is not above zero" },
            { "1e300/1e-300", "longer than any number" },
            { "Inf", "is not a number of seconds" },
            { "Infinity", "is not a number of seconds" },
            { "\u221e", "is not a number of seconds" },
            { "1e999", "is not a number of seconds" },
            { "NaN", "is not a number of seconds" },
            { "1/NaN", "is not one positive number over another" },
            { "bulb", "is not a number of seconds" },
            { "s", "is not a number of seconds" },
            { "\"", "is not a number of seconds" },
            { "2\"\"", "is not a number of seconds" },
            { "1/60 m", "is not one positive number over another" },
            { "1/", "is not one positive number over another" },
            { "/60", "is not one positive number over another" },
            { "\u0661/\u0666\u0660", "is not one positive number over another" },
            { "60 1", "is not a number of seconds" },
        };

    public static TheoryData<double, string> Prints =>
        new()
        {
            { 1 / 60.0, "1/60 s" },
            { 1 / 8000.0, "1/8000 s" },
            { 1 / 13.0, "1/13 s" },
            { 1 / 4.0, "1/4 s" },
            { 0.3, "0.3 s" },
            { 0.5, "0.5 s" },
            { 1, "1 s" },
            { 1.3, "1.3 s" },
            { 2, "2 s" },
            { 30, "30 s" },
            { 1 / 57.0, "1/57 s" },
            { 1 / 64.0, "1/64 s" },
            { 0.0123, "1/81 s" },
            { 1 / 21.4, "1/21.4 s" },
            { 1 / 45.0, "1/45 s" },
            { 1 / 5.4, "0.185 s" },
            { 0.7, "0.7 s" },
            { 47.3, "47.3 s" },
            { 1234.4, "1234 s" },
            { 1e-7, "1E-07 s" },
            { 1e9, "1E+09 s" },
        };

    [Theory]
    [MemberData(nameof(Spellings))]
    public void What_cameras_and_people_write_is_read(string text, double seconds) => Assert.Equal(seconds, Parse(text).Seconds);

    [Theory]
    [MemberData(nameof(Refusals))]
    public void What_is_no_speed_is_refused_with_the_reason_and_the_accepted_forms(string? text, string reason)
    {
        Assert.False(TryParse(text, out var speed, out var problem));
        Assert.Equal(default, speed);
        Assert.Contains(reason, problem, StringComparison.Ordinal);
        Assert.EndsWith(AcceptedForms, problem, StringComparison.Ordinal);
        Assert.Equal(problem, Assert.Throws<FormatException>(() => Parse(text!)).Message);
    }

    [Fact]
    public void A_refusal_shows_its_text_short_and_harmless()
    {
        Assert.False(TryParse("\u001b[31m" + new string('9', 500) + "x", out _, out var problem));
        Assert.StartsWith("'\\u001b[31m999", problem, StringComparison.Ordinal);
        Assert.InRange(problem.Length, 1, 200);
    }

    [Theory]
    [MemberData(nameof(Prints))]
    public void Speeds_print_as_people_write_them(double seconds, string text)
    {
        Assert.Equal(text, FromSeconds(seconds).ToString());
        Assert.Equal(text, FromSeconds(seconds).ToShortText() + " s");
    }

    [Fact]
    public void Every_mark_prints_as_itself_and_reads_back_exactly() =>
        Assert.All(
            Enum.GetValues<Marks>().SelectMany(marks => MarkedSpeeds.Series(marks)),
            mark => Assert.Equal(mark, Parse(mark.ToString()))
        );

    [Theory]
    [InlineData("1/60")]
    [InlineData("1/8000")]
    [InlineData("0.016667")]
    [InlineData("0.3")]
    [InlineData("30")]
    public void Exact_text_is_the_shortest_that_people_would_write(string text) => Assert.Equal(text, Parse(text).ToExactText());

    [Property(Replay = "(20250131,1)", MaxTest = 2000)]
    public bool Exact_text_reads_back_to_the_same_bits(ulong bits)
    {
        var seconds = BitConverter.UInt64BitsToDouble(bits & 0x7fff_ffff_ffff_ffff);
        return !double.IsFinite(seconds) || seconds == 0 || Parse(FromSeconds(seconds).ToExactText()) == FromSeconds(seconds);
    }

    [Property(Replay = "(20250131,3)", MaxTest = 2000)]
    public bool Printed_text_reads_back_to_the_same_speed_for_a_reader(ushort place)
    {
        var speed = FromLog2Seconds(-20 + (30.0 * place / ushort.MaxValue));
        return Parse(speed.ToString()).IsSameSpeed(speed) && Parse(speed.ToShortText()).IsSameSpeed(speed);
    }

    [Property(Replay = "(20250131,5)", MaxTest = 2000)]
    public bool No_text_makes_reading_throw(string? text) => TryParse(text, out _, out var problem) == (problem.Length == 0);

    [Theory]
    [InlineData("sv-SE")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void Reading_and_printing_do_not_depend_on_the_culture_of_the_machine(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            foreach (var (text, seconds) in Spellings.Select(row => row.Data))
                Assert.Equal(seconds, Parse(text).Seconds);
            foreach (var (text, reason) in Refusals.Select(row => row.Data))
                Assert.Contains(reason, TryParse(text, out _, out var problem) ? "read" : problem, StringComparison.Ordinal);
            foreach (var (seconds, text) in Prints.Select(row => row.Data))
                Assert.Equal(text, FromSeconds(seconds).ToString());
            Assert.Equal("1.5E-300", FromSeconds(1.5e-300).ToExactText());
            Assert.Equal("-1.3 stops", new Stops(-1.3).ToString());
            var conditions = new Conditions
            {
                FocalLength = 52.5,
                Order = -1.5,
                Others = Conditions.None.Others.Add("i", "1").Add("I", "2"),
            };
            Assert.Equal(("52.5", "-1.5", "2"), (conditions["focal_mm"], conditions["order"], conditions["I"]));
            Assert.Contains(
                "-1.5 mm",
                Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.Equivalent(-1.5, 1)).Message,
                StringComparison.Ordinal
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
