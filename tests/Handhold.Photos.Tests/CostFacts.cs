namespace Handhold.Photos.Tests;

public class CostFacts
{
    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(90)]
    public void A_JPEG_costs_at_most_256_kB_whatever_lies_between_its_metadata(int segments)
    {
        var jpeg = new Jpeg().Exif(Shelf.Plain());
        for (var i = 0; i < segments; i++)
            jpeg.Segment(0xE2, new byte[65_000]);
        using var shelf = new Shelf().Put("a.jpg", jpeg.Xmp(Shelf.Packet("xmp:Rating=\"3\"")).ToBytes());
        using FileBytes file = new(shelf["a.jpg"]);
        Assert.NotNull(PhotoHeader.Read(file)[HeaderTags.ExposureTime]);
        Assert.InRange(file.Spent, 1, 256 << 10);
    }

    [Fact]
    public void An_ordinary_header_costs_a_few_kilobytes()
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain(), Shelf.Packet("xmp:Rating=\"3\""));
        using FileBytes file = new(shelf["a.jpg"]);
        PhotoHeader.Read(file);
        Assert.InRange(file.Spent, 1, 16 << 10);
    }

    [Fact]
    public void No_more_is_read_than_the_budget_holds()
    {
        using var shelf = new Shelf().Put("a.jpg", new byte[1 << 20]);
        using FileBytes file = new(shelf["a.jpg"]);
        var refused = Assert.Throws<NotTakenException>(() =>
        {
            for (var place = 0; place < 1 << 20; place += 100_000)
                file.At(place, 60_000);
        });
        Assert.Equal(PhotoReason.TooLong, refused.Reason);
        Assert.InRange(file.Spent, 200_000, FileBytes.Budget);
    }
}
