using System.Buffers.Binary;

namespace Handhold.Photos;

/// <summary>Walks the segments of a JPEG up to the picture itself, and reads those of EXIF and XMP.</summary>
/// <remarks>CIPA DC-008 section 4.7.2; ISO 16684-3 section on JPEG. Other segments are stepped over, not read.</remarks>
internal static class JpegHeader
{
    private const byte StartOfScan = 0xDA;
    private const byte EndOfImage = 0xD9;
    private const byte App1 = 0xE1;

    private static ReadOnlySpan<byte> Exif => "Exif\0\0"u8;

    private static ReadOnlySpan<byte> Xmp => "http://ns.adobe.com/xap/1.0/\0"u8;

    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]);

    public static void Read(FileBytes file, long start, HeaderTags tags)
    {
        var (place, read) = (start + 2, false);
        while (!read || (tags.Xmp is null && file.HasBudget))
        {
            while (file.At(place, 2) is [0xFF, 0xFF]) // fill bytes
                place++;
            if (file.At(place, 2) is not [0xFF, var marker] || marker is StartOfScan or EndOfImage)
                return;
            var length = BinaryPrimitives.ReadUInt16BigEndian(file.At(place + 2, 2));
            var (body, end) = (place + 4, place + 2 + Math.Max((ushort)2, length));
            if (marker == App1 && !read && Has(file, body, end, Exif))
            {
                TiffHeader.Read(file, body + Exif.Length, end, tags);
                read = true;
            }
            else if (marker == App1 && Has(file, body, end, Xmp))
                tags.Xmp ??= (body + Xmp.Length, end - body - Xmp.Length);
            place = end;
        }
    }

    private static bool Has(FileBytes file, long body, long end, ReadOnlySpan<byte> name) =>
        end - body >= name.Length && file.At(body, name.Length).SequenceEqual(name);
}
