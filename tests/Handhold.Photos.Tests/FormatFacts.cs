using MetadataExtractor;
using MetadataExtractor.Formats.Exif;

namespace Handhold.Photos.Tests;

public class FormatFacts
{
    private static readonly PhotoOptions s_rated = PhotoOptions.Default with { KeeperFromRating = 1 };

    public static TheoryData<string, byte[]> Files
    {
        get
        {
            var tiff = Full(bigEndian: false).ToBytes();
            var packet = Shelf.Packet("xmp:Rating=\"2\"");
            return new()
            {
                { "a.jpg", new Jpeg().Exif(tiff).Xmp(packet).ToBytes() },
                { "b.jpg", new Jpeg().Xmp(packet).Segment(0xE2, new byte[60_000]).Exif(Full(bigEndian: true).ToBytes()).ToBytes() },
                { "c.tif", WithXmp(Full(bigEndian: true), packet) },
                { "d.nef", WithXmp(Full(bigEndian: false), packet) },
                { "e.orf", [.. "IIRO"u8, .. WithXmp(Full(bigEndian: false), packet)[4..]] },
                { "f.rw2", [.. "IIU\0"u8, .. WithXmp(Full(bigEndian: false), packet)[4..]] },
                { "g.heic", Boxes.Heif(tiff, packet) },
                { "h.raf", Fujifilm(new Jpeg().Exif(tiff).Xmp(packet).ToBytes()) },
            };
        }
    }

    internal static byte[][] Corpus =>
        [
            .. Files.Select(file => file.Data.Item2),
            Boxes.Canon(Full(bigEndian: true).ToBytes(), new Tiff().Ratio(HeaderTags.ExposureTime, 1, 30).ToBytes()),
        ];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_format_says_the_same(string name, byte[] bytes)
    {
        using var shelf = new Shelf().Put(name, bytes);
        var frame = shelf.Only(s_rated);
        Assert.Equal((ShutterSpeed.OneOver(60), Verdict.Keeper), (frame.Exposure, frame.Verdict));
        Assert.Equal(
            (50, 75, 2.4),
            (frame.Conditions.FocalLength, frame.Conditions.EquivalentFocalLength, frame.Conditions.SubjectDistance)
        );
        Assert.StartsWith("Clock One #", frame.Conditions.Setup, StringComparison.Ordinal);
        Assert.Equal(new DateTime(2026, 11, 20, 12, 0, 0).AddMilliseconds(250), shelf.Read().Photos[0].Taken);
    }

    [Fact]
    public void A_raw_file_in_boxes_keeps_its_camera_and_its_exposure_apart()
    {
        using var shelf = new Shelf().Put(
            "a.cr3",
            Boxes.Canon(
                new Tiff().Text(HeaderTags.Model, "Clock Three").ToBytes(),
                new Tiff().Ratio(HeaderTags.ExposureTime, 1, 30).ToBytes()
            )
        );
        var frame = shelf.Only();
        Assert.Equal((ShutterSpeed.OneOver(30), "Clock Three"), (frame.Exposure, frame.Conditions.Setup));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_general_reader_of_metadata_finds_the_same_exposure(string name, byte[] bytes)
    {
        if (name.EndsWith(".heic", StringComparison.Ordinal)) // the general reader wants a picture in them; see the golden case
            return;
        using MemoryStream file = new(bytes);
        var exif = ImageMetadataReader.ReadMetadata(file).OfType<ExifSubIfdDirectory>().First();
        Assert.Equal(new Rational(1, 60), exif.GetRational(ExifDirectoryBase.TagExposureTime));
        Assert.Equal(new Rational(12, 5), exif.GetRational(ExifDirectoryBase.TagSubjectDistance));
        Assert.Equal(75, exif.GetInt32(ExifDirectoryBase.Tag35MMFilmEquivFocalLength));
    }

    [Theory]
    [InlineData("a.jpg", "GIF89a and more bytes than that", PhotoReason.OtherFormat)]
    [InlineData("a.jpg", "short", PhotoReason.EndsEarly)]
    [InlineData("a.txt", "notes", PhotoReason.OtherFile)]
    [InlineData("a.xmp", "<x/>", PhotoReason.SidecarAlone)]
    [InlineData("a.jpg", "", PhotoReason.Empty)]
    public void What_is_no_photograph_is_skipped_with_its_reason(string name, string text, PhotoReason reason)
    {
        using var shelf = new Shelf().Put(name, text);
        Assert.Equal(reason, shelf.Refusal());
    }

    private static Tiff Full(bool bigEndian) =>
        new Tiff(bigEndian)
            .Text(HeaderTags.Model, "Clock One")
            .Text(HeaderTags.BodySerial, "42")
            .Ratio(HeaderTags.ExposureTime, 1, 60)
            .Ratio(HeaderTags.FocalLength, 50, 1)
            .Short(HeaderTags.EquivalentFocalLength, 75)
            .Ratio(HeaderTags.SubjectDistance, 12, 5)
            .Text(HeaderTags.TakenAt, "2026:11:20 12:00:00")
            .Text(HeaderTags.SubSecond, "25");

    private static byte[] WithXmp(Tiff tiff, string packet) =>
        tiff.Bytes(HeaderTags.XmpPacket, System.Text.Encoding.UTF8.GetBytes(packet)).ToBytes();

    private static byte[] Fujifilm(byte[] jpeg)
    {
        byte[] header = [.. "FUJIFILMCCD-RAW 0201"u8, .. new byte[128]];
        header[87] = (byte)header.Length;
        return [.. header, .. jpeg];
    }
}
