using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Prediction;

public class BandFacts
{
    [Fact]
    public void A_band_is_the_interval_at_each_exposure()
    {
        FrameTable table = [new(OneOver(60), 6, 6), new(OneOver(30), 6, 5), new(OneOver(15), 6, 3), new(OneOver(8), 6, 0)];
        var curve = (KeeperModel.Default with { Ceiling = Ceiling.One })
            .Fit(table, cancellation: TestContext.Current.CancellationToken)
            .Only;
        var options = AnswerOptions.Default with { BeyondTested = true, CheckPriors = false };
        var band = curve.Band(OneOver(250), OneOver(2), points: 15);
        for (var i = 0; i < band.Median.Length; i++)
        {
            var rate = curve.RateAt(FromLog2Seconds(band.Log2Seconds[i]), options).Rate!;
            Assert.Equal(rate.Median, band.Median[i], 1e-3);
            Assert.Equal(rate.Interval.Lower, band.Lower[i], 1e-3);
            Assert.Equal(rate.Interval.Upper, band.Upper[i], 1e-3);
        }
    }
}
