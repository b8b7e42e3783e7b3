namespace Handhold.Photos.Tests;

public class HostileFacts
{
    private static byte[] Ordinary => new Jpeg().Exif(Shelf.Plain()).Xmp(Shelf.Packet("xmp:Rating=\"3\"")).ToBytes();

    [Fact]
    public void A_file_cut_anywhere_gives_a_frame_or_a_reason()
    {
        using Shelf shelf = new();
        for (var length = 0; length < Ordinary.Length; length++)
            shelf.Put($"{length}.jpg", Ordinary[..length]);
        var read = shelf.Read();
        Assert.Equal(Ordinary.Length, read.Photos.Length + read.Skipped.Length);
        Assert.DoesNotContain(read.Skipped, skipped => skipped.Reason == PhotoReason.Malformed);
    }

    [Fact]
    public void A_directory_that_points_to_itself_ends()
    {
        using var shelf = new Shelf().Put("a.tif", [.. "II*\0"u8, 8, 0, 0, 0, 1, 0, 0x69, 0x87, 4, 0, 1, 0, 0, 0, 8, 0, 0, 0, 0, 0, 0, 0]);
        Assert.Equal(PhotoReason.NoExposure, shelf.Refusal());
    }

    [Theory]
    [InlineData(0x829A, 5, uint.MaxValue)]
    [InlineData(0x014A, 4, 500_000_000u)]
    [InlineData(0xA434, 2, uint.MaxValue)]
    [InlineData(0x02BC, 1, uint.MaxValue)]
    public void A_length_in_a_file_allocates_nothing(ushort tag, ushort type, uint count)
    {
        using var shelf = new Shelf().Put("a.tif", Shelf.Plain().Claimed(tag, type, count, 8).ToBytes());
        using (var file = File.OpenWrite(shelf["a.tif"]))
            file.SetLength(4L << 30);
        var cost = Cost.Of(() => new PhotoFile(PhotoOptions.Default).Read(new(shelf["a.tif"], "a.tif", null)));
        Assert.InRange(cost.Bytes, 0, 1 << 20);
        Assert.InRange(cost.Milliseconds, 0, 1000);
    }

    [Fact]
    public void A_sparse_file_of_four_gigabytes_that_says_nothing_is_skipped()
    {
        using var shelf = new Shelf().Put("a.jpg", "");
        using (var file = File.OpenWrite(shelf["a.jpg"]))
            file.SetLength(4L << 30);
        Assert.Equal(PhotoReason.OtherFormat, shelf.Refusal());
    }

    [Fact]
    public void Segments_without_end_are_given_up()
    {
        Jpeg jpeg = new();
        for (var i = 0; i < 100_000; i++)
            jpeg.Segment(0xE5, [1, 2]);
        using var shelf = new Shelf().Put("a.jpg", jpeg.ToBytes());
        Assert.Equal(PhotoReason.TooLong, shelf.Refusal());
    }

    [Fact]
    public void Boxes_without_end_are_given_up()
    {
        using var shelf = new Shelf().Put(
            "a.heic",
            [.. Boxes.Box("ftyp", "heic"u8.ToArray()), .. Enumerable.Repeat(Boxes.Box("free", []), 50_000).SelectMany(box => box)]
        );
        Assert.Equal(PhotoReason.TooLong, shelf.Refusal());
    }

    public static TheoryData<string> Bombs =>
        [
            "<!DOCTYPE b [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\">]><b>&b;</b>",
            "<!DOCTYPE b SYSTEM \"file:///etc/passwd\"><b/>",
            string.Concat(Enumerable.Repeat("<a>", 400_000)),
            Shelf.Packet(string.Concat(Enumerable.Range(0, 100_000).Select(i => $"xmp:a{i}=\"\" "))),
            Shelf.Packet("", string.Concat(Enumerable.Range(0, 9_000).Select(i => $"<xmp:a{i}>1</xmp:a{i}>"))),
            Shelf.Packet($"xmp:Label=\"{new string('a', 3 << 20)}\""),
            Shelf.Packet($"xmp:Label=\"{new string('a', 5 << 20)}\""),
        ];

    [Theory]
    [MemberData(nameof(Bombs))]
    public void A_bomb_in_a_sidecar_costs_less_than_a_second_and_not_the_frame(string packet)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain()).Put("a.xmp", packet);
        var cost = Cost.Of(() => Sidecar.Read(shelf["a.xmp"]));
        Assert.InRange(cost.Milliseconds, 0, 1000);
        Assert.InRange(cost.Bytes, 0, 64 << 20);
        Assert.Single(shelf.Read().Photos);
    }

    [Fact]
    public void A_name_with_control_characters_is_shown_without_them()
    {
        using var shelf = new Shelf().Put("line\nbreak\u001b[2J.jpg", Ordinary);
        Assert.EndsWith("/line?break?[2J.jpg", Assert.Single(shelf.Read().Photos).Path, StringComparison.Ordinal);
        Assert.Equal("line?break?[2J.jpg", shelf.Read().ToTable()[0].Conditions["photo"]!.Split('/')[^1]);
    }
}
