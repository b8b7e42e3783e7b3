namespace Handhold.Photos.Tests;

public class ExposureFacts
{
    [Theory]
    [InlineData(1, 60)]
    [InlineData(10, 600)]
    [InlineData(166667, 10000000)]
    [InlineData(13, 10)]
    [InlineData(4, 1)]
    public void The_exposure_time_is_the_quotient_to_the_last_bit(uint over, uint under)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain().Ratio(HeaderTags.ExposureTime, over, under));
        Assert.Equal((double)over / under, shelf.Only().Exposure.Seconds);
    }

    [Fact]
    public void A_sixtieth_from_a_camera_is_the_sixtieth_that_people_type()
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain());
        Assert.Equal(ShutterSpeed.Parse("1/60"), shelf.Only().Exposure);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 0)]
    [InlineData(0, 1)]
    [InlineData(uint.MaxValue, 1)]
    public void What_is_no_time_gives_no_frame(uint over, uint under)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain().Ratio(HeaderTags.ExposureTime, over, under));
        Assert.Equal(PhotoReason.ImpossibleExposure, shelf.Refusal());
    }

    [Theory]
    [InlineData(6, 1, 1 / 64.0)]
    [InlineData(-2, 1, 4)]
    [InlineData(0, 7, 1)]
    public void The_APEX_value_stands_in_for_what_is_no_time(int over, int under, double seconds)
    {
        using var shelf = new Shelf().Put(
            "a.jpg",
            Shelf.Plain().Ratio(HeaderTags.ExposureTime, 0, 0).SignedRatio(HeaderTags.ShutterSpeedValue, over, under)
        );
        Assert.Equal(seconds, shelf.Only().Exposure.Seconds);
        Assert.Equal(PhotoReason.ApexOnly, Assert.Single(shelf.Read().Remarks).Reason);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 0)]
    [InlineData(1000, 1)]
    [InlineData(-1000, 1)]
    public void An_APEX_value_that_means_nothing_does_not_stand_in(int over, int under)
    {
        using var shelf = new Shelf().Put(
            "a.jpg",
            Shelf.Plain().Ratio(HeaderTags.ExposureTime, 0, 1).SignedRatio(HeaderTags.ShutterSpeedValue, over, under)
        );
        Assert.Equal(PhotoReason.ImpossibleExposure, shelf.Refusal());
    }

    [Theory]
    [InlineData(6, 1, false)] // 1/64, the exact speed behind the mark 1/60
    [InlineData(5907, 1000, false)]
    [InlineData(58, 10, true)]
    [InlineData(5, 1, true)]
    public void Exposure_time_and_APEX_value_are_flagged_beyond_a_tenth_of_a_stop(int over, int under, bool flagged)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain().SignedRatio(HeaderTags.ShutterSpeedValue, over, under));
        Assert.Equal(ShutterSpeed.OneOver(60), shelf.Only().Exposure);
        Assert.Equal(flagged ? [PhotoReason.ExposuresDiffer] : [], shelf.Read().Remarks.Select(remark => remark.Reason));
    }

    [Fact]
    public void A_photograph_without_an_exposure_is_skipped_and_says_so()
    {
        using var shelf = new Shelf().Put("a.jpg", new Tiff().Text(HeaderTags.Model, "Clock One"));
        Assert.Equal(PhotoReason.NoExposure, shelf.Refusal());
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    [InlineData(3, false)]
    public void A_composite_of_several_exposures_is_no_frame(ushort kind, bool taken)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain().Short(HeaderTags.CompositeImage, kind));
        Assert.Equal(taken ? 1 : 0, shelf.Read().Photos.Length);
    }
}
