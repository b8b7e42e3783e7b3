using FsCheck.Xunit;

namespace Handhold.Tests.Curves;

public sealed class CurveShapeProperties
{
    // Inverting and predicting are two formulas; they must undo each other for falling and rising curves, any floor, ceiling and rate.
    [Property(MaxTest = 2000, Replay = "(20251125,3)")]
    public void The_rate_at_the_exposure_for_a_rate_is_that_rate(bool rising, byte half, byte steep, byte low, byte high, ushort rate)
    {
        var floor = low / 256.0 * 0.9;
        CurveShape shape = new()
        {
            HalfPoint = half / 8.0 - 20,
            Steepness = (rising ? -1 : 1) * (0.05 + steep / 32.0),
            Floor = floor,
            Ceiling = floor + (1 - floor) * (1 + high) / 256.0,
        };
        var wanted = shape.Floor + (shape.Ceiling - shape.Floor) * (rate + 0.5) / 65536;
        Assert.Equal(wanted, shape.RateAt(shape.ExposureFor(wanted)!.Value), 1e-10);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.97)]
    public void A_rate_at_the_floor_or_the_ceiling_has_no_exposure(double rate) =>
        Assert.Null(
            new CurveShape
            {
                HalfPoint = -4,
                Steepness = 1.6,
                Floor = 0.1,
                Ceiling = 0.97,
            }.ExposureFor(rate)
        );
}
