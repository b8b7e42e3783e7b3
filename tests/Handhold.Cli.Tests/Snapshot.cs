using System.Buffers.Binary;
using System.Text;

namespace Handhold.Cli.Tests;

/// <summary>Photographs without pictures: a camera called Clock One, 50 mm, and an exposure, a moment and a rating of one's own.</summary>
internal static class Snapshot
{
    private const string Sixtieth =
        "/9j/4QCGRXhpZgAASUkqAAgAAAACABABAgAKAAAAUAAAAGmHBAABAAAAJgAAAAAAAAADAJqCBQABAAAAWgAAAAOQAgAUAAAAYgAAAAqSBQABAAAAdgAAAAAAAABDbG9jay"
        + "BPbmUAAQAAADwAAAAyMDI2OjExOjIwIDEyOjAwOjAwADIAAAABAAAA/9oAAv/Z";

    /// <summary>Puts a photograph, and where it is rated its sidecar, into a folder.</summary>
    public static void Put(Folder folder, string name, uint denominator, string time, int? rating = null)
    {
        var bytes = Convert.FromBase64String(Sixtieth);
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(bytes.AsSpan().IndexOf((ReadOnlySpan<byte>)[60, 0, 0, 0])), denominator);
        Encoding.ASCII.GetBytes(time).CopyTo(bytes.AsSpan(bytes.AsSpan().IndexOf("12:00:00"u8)));
        Directory.CreateDirectory(Path.GetDirectoryName(folder[name])!);
        File.WriteAllBytes(folder[name], bytes);
        if (rating is not null)
            folder.Write(
                name + ".xmp",
                $"""
                <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                <rdf:Description xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Rating="{rating}"/></rdf:RDF></x:xmpmeta>
                """
            );
    }

    /// <summary>Twenty-four frames of four speeds in bursts of three: all keepers at the fast end, none at the slow one, two not judged.</summary>
    public static void PutShoot(Folder folder)
    {
        uint[] denominators = [125, 60, 30, 15];
        for (var i = 0; i < 24; i++)
        {
            int? rating =
                i is 4 or 20 ? null
                : (i % 3) + 1 < 4 - (i / 6) ? 4
                : -1;
            Put(folder, $"IMG_{i + 1:0000}.jpg", denominators[i / 6], $"12:{i / 3:00}:{i % 3:00}", rating);
        }
    }
}
