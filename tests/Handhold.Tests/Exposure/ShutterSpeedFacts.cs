using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Exposure;

public class ShutterSpeedFacts
{
    [Fact]
    public void One_stop_slower_is_twice_the_time() => Assert.Equal(new Stops(1), OneOver(30).SlowerThan(OneOver(60)));

    [Fact]
    public void Equality_is_exact()
    {
        Assert.Equal(OneOver(60), FromSeconds(10.0 / 600));
        Assert.NotEqual(OneOver(60), FromSeconds(0.016667));
        Assert.NotEqual(OneOver(60), FromSeconds((float)(1 / 60.0)));
    }

    [Theory]
    [InlineData(0.016667)]
    [InlineData(0.0167)]
    [InlineData(0.01666666753590107)] // 1/60 in single precision
    public void Recorded_sixtieths_are_one_speed_to_a_reader(double seconds)
    {
        Assert.True(FromSeconds(seconds).IsSameSpeed(OneOver(60)));
        Assert.Equal("1/60 s", FromSeconds(seconds).ToString());
    }

    [Fact]
    public void A_sixtieth_and_a_sixty_first_are_two_speeds() => Assert.False(OneOver(60).IsSameSpeed(OneOver(61)));

    [Fact]
    public void The_tolerance_of_same_speed_can_be_chosen() => Assert.True(OneOver(60).IsSameSpeed(OneOver(64), tolerance: 0.1));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Times_that_are_not_positive_and_finite_are_refused(double seconds)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => FromSeconds(seconds));
        Assert.Contains("above 0 s", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => OneOver(seconds));
    }

    [Theory]
    [InlineData(-1075)]
    [InlineData(1024)]
    [InlineData(double.NaN)]
    public void Logarithms_beyond_doubles_are_refused(double log2Seconds) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FromLog2Seconds(log2Seconds));

    [Theory]
    [InlineData(-1074)]
    [InlineData(-13)]
    [InlineData(0)]
    [InlineData(1023)]
    public void Whole_stops_survive_the_logarithm(double log2Seconds) =>
        Assert.Equal(log2Seconds, FromLog2Seconds(log2Seconds).Log2Seconds);

    [Fact]
    public void Distances_are_finite_at_the_ends_of_the_number_line() =>
        Assert.Equal(2046 + 51, FromLog2Seconds(1023).SlowerThan(FromLog2Seconds(-1074)).Value);

    [Fact]
    public void A_speed_never_set_says_how_to_set_it()
    {
        var error = Assert.Throws<InvalidOperationException>(() => default(ShutterSpeed).Seconds);
        Assert.Contains("never set", error.Message, StringComparison.Ordinal);
        Assert.Contains("OneOver(60)", error.Message, StringComparison.Ordinal);
        Assert.Equal("no shutter speed", default(ShutterSpeed).ToString());
    }

    [Fact]
    public void Speeds_sort_from_fast_to_slow()
    {
        ShutterSpeed[] speeds = [FromSeconds(2), OneOver(60), OneOver(8)];
        Array.Sort(speeds);
        Assert.Equal([OneOver(60), OneOver(8), FromSeconds(2)], speeds);
        Assert.True(speeds[0] < speeds[1] && speeds[2] > speeds[1] && speeds[0] <= speeds[1] && speeds[2] >= speeds[1]);
    }
}
