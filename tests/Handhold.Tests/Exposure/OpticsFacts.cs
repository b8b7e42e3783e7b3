namespace Handhold.Tests.Exposure;

public class OpticsFacts
{
    [Fact]
    public void Four_focal_lengths_are_life_size_for_every_lens() =>
        Assert.All(
            Enumerable.Range(1, 2000),
            focal => Assert.Equal(1, Magnification.FromSensorDistance(focal / 2.0, 2 * focal / 1000.0), tolerance: 1e-7)
        );

    [Fact]
    public void Closer_than_four_focal_lengths_is_refused_with_the_remedy()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromSensorDistance(100, 0.39));
        Assert.StartsWith("A 100 mm lens cannot focus 0.39 m from the sensor", error.Message, StringComparison.Ordinal);
        Assert.Contains("Give the magnification itself", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_subject_within_the_focal_length_has_no_image()
    {
        Assert.Equal(1, Magnification.FromLensDistance(50, 0.1));
        Assert.Equal(2, Magnification.FromLensDistance(50, 0.075));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromLensDistance(50, 0.05));
    }

    [Fact]
    public void A_known_object_gives_the_magnification() => Assert.Equal(0.25, Magnification.FromObject(24, 1500, 4), 1e-15);

    [Fact]
    public void The_usual_sensors_have_the_usual_crop_factors()
    {
        Assert.Equal(1, FocalLength.CropFactor(36, 24));
        Assert.Equal(1.53, FocalLength.CropFactor(23.5, 15.6), 0.005);
        Assert.Equal(2.00, FocalLength.CropFactor(17.3, 13), 0.005);
        Assert.Equal(75, FocalLength.Equivalent(50, 1.5));
    }

    [Fact]
    public void A_print_permits_30_micrometres_on_24_by_36_and_less_on_smaller_sensors()
    {
        Assert.Equal(30, Criterion.PermittedBlur(Criterion.Print, null, null));
        Assert.Equal(20, Criterion.PermittedBlur(Criterion.Print, 1.5, 4));
    }

    [Fact]
    public void Pixels_permit_their_pitch()
    {
        Assert.Equal(6, Criterion.PermittedBlur(Criterion.Pixel, 1.5, null));
        Assert.Equal(4, Criterion.PermittedBlur(new("pixel"), 1.5, 4));
    }

    [Fact]
    public void An_unknown_criterion_permits_as_many_stops_more_than_pixels_as_less_than_prints()
    {
        Assert.Equal(Math.Sqrt(180), Criterion.PermittedBlur(null, null, null));
        Assert.Equal(Math.Sqrt(20 * 4), Criterion.PermittedBlur(new("the committee's"), 1.5, 4), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Numbers_that_cannot_be_are_refused(double number)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromSensorDistance(number, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromSensorDistance(50, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromLensDistance(number, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromLensDistance(50, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromObject(number, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromObject(1, number, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Magnification.FromObject(1, 1, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.CropFactor(number, 24));
        Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.CropFactor(36, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.Equivalent(number, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.Equivalent(50, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.ReciprocalRule(number));
        Assert.Throws<ArgumentOutOfRangeException>(() => StoppedAction.SlowestExposure(number, 0.1, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => StoppedAction.SlowestExposure(30, number, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => StoppedAction.SlowestExposure(30, 0.1, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => StoppedAction.SlowestExposure(30, 0.1, 20, number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Apex.ApertureValue(number));
        Assert.Throws<ArgumentOutOfRangeException>(() => Criterion.PermittedBlur(null, number, null));
        Assert.Throws<ArgumentOutOfRangeException>(() => Criterion.PermittedBlur(null, null, number));
    }

    [Fact]
    public void A_negative_magnification_is_refused_by_the_rule_of_thumb() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FocalLength.ReciprocalRule(50, -0.1));

    [Fact]
    public void Four_times_the_blur_permits_two_stops_more()
    {
        var strict = StoppedAction.SlowestExposure(15, 0.1, 20);
        Assert.Equal(2, StoppedAction.SlowestExposure(60, 0.1, 20).SlowerThan(strict).Value, 1e-12);
    }
}
