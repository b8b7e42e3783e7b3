namespace Handhold.Photos.Tests;

public class ConditionFacts
{
    [Fact]
    public void Lens_equivalent_distance_and_pixels_are_read_in_our_units()
    {
        using var shelf = new Shelf().Put(
            "a.jpg",
            Shelf
                .Plain()
                .Short(HeaderTags.EquivalentFocalLength, 75)
                .Ratio(HeaderTags.SubjectDistance, 12, 5)
                .Ratio(HeaderTags.FocalPlaneResolution, 2500, 1)
                .Short(HeaderTags.FocalPlaneUnit, 3)
        );
        var conditions = shelf.Only().Conditions;
        Assert.Equal(
            (50, 75, 2.4, 4),
            (conditions.FocalLength, conditions.EquivalentFocalLength, conditions.SubjectDistance, conditions.PixelPitch)
        );
    }

    [Fact]
    public void Resolution_is_per_inch_unless_said() =>
        Assert.Equal(10, Of(Shelf.Plain().Ratio(HeaderTags.FocalPlaneResolution, 2540, 1)).PixelPitch);

    [Theory]
    [InlineData(0, 1)] // unknown
    [InlineData(uint.MaxValue, 1)] // infinity
    [InlineData(1, 0)]
    [InlineData(0, 0)]
    public void An_unknown_or_infinite_distance_is_not_recorded(uint over, uint under) =>
        Assert.Null(Of(Shelf.Plain().Ratio(HeaderTags.SubjectDistance, over, under)).SubjectDistance);

    [Fact]
    public void A_focal_length_of_nought_is_not_recorded() =>
        Assert.Null(Of(Shelf.Plain().Ratio(HeaderTags.FocalLength, 0, 1)).FocalLength);

    [Fact]
    public void An_equivalent_of_nought_is_not_recorded() =>
        Assert.Null(Of(Shelf.Plain().Short(HeaderTags.EquivalentFocalLength, 0)).EquivalentFocalLength);

    [Fact]
    public void A_distance_at_which_the_lens_cannot_focus_is_left_out_with_a_remark()
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain().Ratio(HeaderTags.SubjectDistance, 15, 100));
        Assert.Null(shelf.Only().Conditions.SubjectDistance);
        Assert.Equal(PhotoReason.ImpossibleDistance, Assert.Single(shelf.Read().Remarks).Reason);
    }

    [Fact]
    public void Camera_and_lens_are_the_setup() => Assert.Equal("Clock One + 50 mm", Of(Shelf.Plain()).Setup);

    [Fact]
    public void A_serial_number_tells_bodies_apart_and_stays_unread()
    {
        using var shelf = new Shelf()
            .Put("a.jpg", Shelf.Plain("2026:11:20 12:00:00").Text(HeaderTags.BodySerial, "1234567"))
            .Put("b.jpg", Shelf.Plain("2026:11:20 12:00:10").Text(HeaderTags.BodySerial, "1234567"))
            .Put("c.jpg", Shelf.Plain("2026:11:20 12:00:20").Text(HeaderTags.BodySerial, "1234568"));
        var setups = shelf.Read().Photos.Select(photo => photo.Frame.Conditions.Setup!).ToArray();
        Assert.Equal(setups[0], setups[1]);
        Assert.NotEqual(setups[1], setups[2]);
        Assert.All(setups, setup => Assert.Matches(@"^Clock One #[0-9a-f]{8} \+ 50 mm$", setup));
    }

    [Fact]
    public void A_salt_of_ones_own_changes_what_serial_numbers_become()
    {
        var tiff = Shelf.Plain().Text(HeaderTags.LensSerial, "1234567");
        Assert.NotEqual(Of(tiff).Setup, Of(tiff, PhotoOptions.Default with { SerialSalt = "pepper" }).Setup);
    }

    [Fact]
    public void Control_characters_of_a_label_are_shown_as_question_marks() =>
        Assert.Equal("Clock?[31mOne + 50 mm", Of(Shelf.Plain().Text(HeaderTags.Model, "Clock\u001b[31mOne")).Setup);

    private static Conditions Of(Tiff tiff, PhotoOptions? options = null)
    {
        using var shelf = new Shelf().Put("a.jpg", tiff);
        return shelf.Only(options).Conditions;
    }
}
