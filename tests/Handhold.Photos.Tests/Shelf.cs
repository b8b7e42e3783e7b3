using System.Text;

namespace Handhold.Photos.Tests;

/// <summary>A folder of photographs that lives as long as a test.</summary>
internal sealed class Shelf : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("handhold-photos-");

    public string Place => _folder.FullName;

    public string this[string name] => Path.Combine(Place, name);

    /// <summary>An ordinary photograph: 1/60 s with a 50 mm lens, at noon.</summary>
    public static Tiff Plain(string taken = "2026:11:20 12:00:00", uint denominator = 60) =>
        new Tiff()
            .Text(HeaderTags.Model, "Clock One")
            .Text(HeaderTags.LensModel, "50 mm")
            .Ratio(HeaderTags.ExposureTime, 1, denominator)
            .Ratio(HeaderTags.FocalLength, 50, 1)
            .Text(HeaderTags.TakenAt, taken);

    /// <summary>An XMP packet with these attributes and elements of one description.</summary>
    public static string Packet(string attributes, string elements = "") =>
        $"""
            <?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" {attributes}>{elements}</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>
            """;

    public Shelf Put(string name, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(this[name])!);
        File.WriteAllBytes(this[name], bytes);
        return this;
    }

    public Shelf Put(string name, Tiff tiff, string? xmp = null)
    {
        var jpeg = new Jpeg().Exif(tiff);
        return Put(name, (xmp is null ? jpeg : jpeg.Xmp(xmp)).ToBytes());
    }

    public Shelf Put(string name, string text) => Put(name, Encoding.UTF8.GetBytes(text));

    public PhotoImport Read(PhotoOptions? options = null) =>
        Photographs.Read([Place], options, cancellation: TestContext.Current.CancellationToken);

    /// <summary>The one photograph of a shelf that holds no other.</summary>
    public ShotFrame Only(PhotoOptions? options = null) => Assert.Single(Read(options).Photos).Frame;

    /// <summary>Why the one file was not taken.</summary>
    public PhotoReason Refusal()
    {
        var read = Read();
        Assert.Empty(read.Photos);
        return Assert.Single(read.Skipped).Reason;
    }

    public void Dispose()
    {
        foreach (var folder in _folder.EnumerateDirectories())
            if (!OperatingSystem.IsWindows() && folder.LinkTarget is null)
                folder.UnixFileMode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        _folder.Delete(recursive: true);
    }
}
