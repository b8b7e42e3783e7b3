using static Handhold.ShutterSpeed;

namespace Handhold.Tables.Tests;

public class ExposureTests
{
    [Theory]
    [InlineData("1/60", 1.0 / 60)]
    [InlineData("1/60 s", 1.0 / 60)]
    [InlineData("300/10", 30)]
    [InlineData("1.3s", 1.3)]
    [InlineData("2\"", 2)]
    [InlineData("0.5", 0.5)]
    public void A_speed_may_be_written_as_people_do(string written, double seconds) =>
        Assert.Equal(FromSeconds(seconds), Text.Read($"exposure,keeper\n{written},yes\n")[0].Exposure);

    [Theory]
    [InlineData("1/0")]
    [InlineData("0/0")]
    [InlineData("-1/60")]
    [InlineData("Inf")]
    [InlineData("NaN")]
    [InlineData("1/60/2")]
    [InlineData("fast")]
    [InlineData("0")]
    public void What_is_no_speed_is_refused_with_the_accepted_forms(string written)
    {
        var error = Text.Error($"exposure,keeper\n1/30,yes\n{written},yes\n");
        Assert.Equal((3, "exposure", written, AcceptedForms), (error.Line, error.Column, error.Value, error.Remedy));
        Assert.DoesNotContain(AcceptedForms, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_speed_is_refused() =>
        Assert.Equal((2, "exposure"), Text.Error("exposure,keeper\n,yes\n") is var e ? (e.Line, e.Column) : default);

    [Theory]
    [InlineData("Jan-60")]
    [InlineData("60-Jan")]
    [InlineData("1-Jan")]
    [InlineData("Jan 60")]
    [InlineData("1. Januar")]
    [InlineData("janv.-60")]
    [InlineData("Jan 1, 1960")]
    [InlineData("1-Jan-60")]
    [InlineData("1960-01-01")]
    [InlineData("1960-01")]
    [InlineData("1960-01-01 00:00:00")]
    [InlineData("1960-01-01T00:00:00Z")]
    [InlineData("01/60/2024")]
    [InlineData("1/1/1960")]
    [InlineData("01.01.1960")]
    [InlineData("01.01.60")]
    [InlineData("21916")]
    public void A_date_is_refused_with_the_remedy(string written)
    {
        var error = Text.Error($"exposure\tkeeper\n1/30\tyes\n{written}\tyes\n");
        Assert.Equal((3, "exposure", written), (error.Line, error.Column, error.Value));
        Assert.Contains("date", error.Message, StringComparison.Ordinal);
        Assert.Contains("Format the column as text", error.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("60", "30", "15")]
    [InlineData("125", "8", "2")]
    [InlineData("8", "4", "2")]
    [InlineData("30", "30", "30")]
    [InlineData("16000", "8000", "1")]
    public void Whole_numbers_that_lack_their_one_over_are_refused_once(string a, string b, string c)
    {
        var error = Text.Error($"exposure,keeper\n{a},yes\n{b},yes\n{c},no\n");
        Assert.Equal((2, "exposure", a), (error.Line, error.Column, error.Value));
        Assert.StartsWith($"Write 1/{a} for a fraction, {a} s for seconds", error.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void One_number_among_fractions_that_no_camera_marks_in_seconds_is_refused() =>
        Assert.Equal([2, 4], Text.Errors("exposure,keeper\n60,yes\n1/30,yes\n125,yes\n30,no\n").Select(e => e.Line));

    [Theory]
    [InlineData("1", "2", "4")]
    [InlineData("4", "2", "1/2")]
    [InlineData("30", "8", "1/2")]
    [InlineData("8", "4", "0.5")]
    [InlineData("60 s", "30 s", "15 s")]
    [InlineData("60\"", "30\"", "15\"")]
    [InlineData("8", "4", "7")]
    public void Genuine_seconds_are_read(string a, string b, string c) =>
        Assert.Equal(Parse(a), Text.Read($"exposure,keeper\n{a},yes\n{b},yes\n{c},no\n")[0].Exposure);

    [Theory]
    [InlineData("60")]
    [InlineData("21916")]
    [InlineData("1E-300")]
    [InlineData("1.7976931348623157E+308")]
    [InlineData("5E-324")]
    [InlineData("0.016666666666666666")]
    public void Plain_seconds_are_any_positive_number(string seconds) =>
        Assert.Equal(
            BitConverter.DoubleToInt64Bits(double.Parse(seconds, System.Globalization.CultureInfo.InvariantCulture)),
            BitConverter.DoubleToInt64Bits(Text.Read($"exposure_s,keeper\n{seconds},yes\n{seconds},no\n")[0].Exposure.Seconds)
        );

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("1E-400")]
    [InlineData("1E400")]
    [InlineData("1/60")]
    [InlineData("NaN")]
    [InlineData("")]
    public void Plain_seconds_are_nothing_else(string seconds) =>
        Assert.Equal(
            (2, "exposure_s", seconds),
            Text.Error($"exposure_s,keeper\n{seconds},yes\n") is var e ? (e.Line, e.Column, e.Value) : default
        );
}
