using FsCheck.Xunit;
using static Handhold.MarkedSpeeds;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Exposure;

public class MarkedSpeedsFacts
{
    [Theory]
    [InlineData(Marks.Full, 19)]
    [InlineData(Marks.Half, 37)]
    [InlineData(Marks.Third, 55)]
    public void A_series_runs_over_eighteen_stops_from_an_eight_thousandth_to_thirty_seconds(Marks marks, int count)
    {
        var series = Series(marks);
        Assert.Equal(count, series.Length);
        Assert.Equal((OneOver(8000), FromSeconds(30)), (series[0], series[^1]));
        Assert.Equal(series.Order().Distinct(), series);
    }

    [Theory]
    [InlineData(Marks.Full)]
    [InlineData(Marks.Half)]
    [InlineData(Marks.Third)]
    public void A_mark_is_nearest_to_itself_and_to_the_exact_time_behind_it(Marks marks) =>
        Assert.All(
            Series(marks),
            mark =>
            {
                Assert.Equal(mark, Nearest(mark, marks));
                Assert.Equal(mark, AtMost(mark, marks));
                Assert.Equal(mark, Nearest(Exact(mark, marks), marks));
            }
        );

    [Theory]
    [InlineData(0.0748, "1/13 s")]
    [InlineData(40, "30 s")]
    [InlineData(200, "200 s")]
    public void People_are_told_the_mark_unless_none_is_near(double seconds, string told) =>
        Assert.Equal(told, Told(FromSeconds(seconds), Marks.Third).ToString());

    [Property(Replay = "(20250131,7)", MaxTest = 1000)]
    public bool No_other_mark_is_nearer(ushort place, Marks marks)
    {
        var speed = FromLog2Seconds(-15 + (22.0 * place / ushort.MaxValue));
        var distance = Math.Abs(Nearest(speed, marks).SlowerThan(speed).Value);
        return Series(marks).All(mark => Math.Abs(mark.SlowerThan(speed).Value) >= distance);
    }

    [Property(Replay = "(20250131,9)", MaxTest = 1000)]
    public bool At_most_is_not_slower_and_the_next_mark_is(ushort place, Marks marks)
    {
        var speed = FromLog2Seconds(-12.9 + (20.0 * place / ushort.MaxValue));
        var mark = AtMost(speed, marks);
        return mark <= speed && Series(marks).Where(m => m > mark).All(m => m > speed);
    }

    [Fact]
    public void A_mark_through_single_precision_or_logarithms_is_still_at_most_itself()
    {
        Assert.All(
            Series(Marks.Third),
            mark =>
            {
                Assert.Equal(mark, AtMost(FromSeconds((float)mark.Seconds), Marks.Third));
                Assert.Equal(mark, AtMost(FromLog2Seconds(mark.Log2Seconds), Marks.Third));
            }
        );
        Assert.Equal(OneOver(80), AtMost(OneOver(60.001), Marks.Third));
    }

    [Fact]
    public void Beyond_the_slow_end_is_the_slowest_mark()
    {
        Assert.Equal(FromSeconds(30), Nearest(FromSeconds(300), Marks.Full));
        Assert.Equal(FromSeconds(30), AtMost(FromSeconds(300), Marks.Full));
    }

    [Fact]
    public void Beyond_the_fast_end_the_nearest_is_the_fastest_mark_and_none_is_at_most()
    {
        Assert.Equal(OneOver(8000), Nearest(OneOver(32000), Marks.Full));
        Assert.False(TryAtMost(OneOver(9000), Marks.Full, out var mark));
        Assert.Equal(default, mark);
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => AtMost(OneOver(9000), Marks.Full));
        Assert.Contains("1/9000 s is faster than 1/8000 s", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void There_are_three_series() => Assert.Throws<ArgumentOutOfRangeException>(() => Series((Marks)3));
}
