using static Handhold.ShutterSpeed;

namespace Handhold.Plots.Tests;

public class WordsFacts
{
    [Theory]
    [InlineData(0.5, 13.0, "Half the frames are keepers at 1/13\u00a0s")]
    [InlineData(0.8, 27.0, "80\u00a0% of frames are keepers at 1/25\u00a0s")]
    [InlineData(0.875, 1.0, "87.5\u00a0% of frames are keepers at about 1\u00a0s, slower than tested")]
    [InlineData(0.5, 1000.0, "Half the frames are keepers at about 1/1000\u00a0s, faster than tested")]
    public void The_title_names_the_nearest_mark(double rate, double denominator, string words) =>
        Assert.Equal(words, Finding(rate, OneOver(denominator).Log2Seconds));

    [Fact]
    public void Without_an_exposure_the_title_says_why()
    {
        Assert.Equal("Probably no shutter speed makes 80\u00a0% of frames keepers", Finding(0.8, null, reachable: false));
        Assert.Equal("More than half are still keepers at 1/4\u00a0s, the slowest tested", Finding(0.5, null, slowestRate: 0.7));
        Assert.Equal("Fewer than 80\u00a0% are keepers even at 1/250\u00a0s, the fastest tested", Finding(0.8, null, slowestRate: 0.1));
    }

    [Fact]
    public void A_time_far_from_every_mark_is_written_out() => Assert.Equal("100\u00a0s", CurveWords.Speed(Math.Log2(100), Marks.Third));

    [Fact]
    public void Every_shape_of_an_exposure_set_has_words()
    {
        var (fast, slow) = (OneOver(30).Log2Seconds, OneOver(8).Log2Seconds);
        Assert.Equal("1/30 to 1/8\u00a0s", CurveWords.Pieces([(fast, slow)], Marks.Third));
        Assert.Equal("1/8\u00a0s or faster", CurveWords.Pieces([(null, slow)], Marks.Third));
        Assert.Equal("1/30\u00a0s or slower", CurveWords.Pieces([(fast, null)], Marks.Third));
        Assert.Equal("any speed", CurveWords.Pieces([(null, null)], Marks.Third));
        Assert.Equal("1/30\u00a0s or faster, or 1/8\u00a0s or slower", CurveWords.Pieces([(null, fast), (slow, null)], Marks.Third));
    }

    private static string Finding(double rate, double? exposure, bool reachable = true, double slowestRate = 0.1) =>
        CurveWords.Finding(
            new TargetExposure(rate, exposure, [], reachable),
            OneOver(250).Log2Seconds,
            OneOver(4).Log2Seconds,
            slowestRate,
            Marks.Third
        );
}
