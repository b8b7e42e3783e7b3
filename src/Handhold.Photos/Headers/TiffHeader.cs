namespace Handhold.Photos;

/// <summary>Reads the first directory of a TIFF structure and the EXIF directory it points to, and of them the wanted tags only.</summary>
/// <remarks>TIFF 6.0 section 2. No directory is entered twice and no length in the file decides how much is allocated.</remarks>
internal sealed class TiffHeader(FileBytes file, long start, long end, HeaderTags tags)
{
    private const int EntryLength = 12;
    private const int LongestValue = 1024;

    /// <summary>Whether the first four bytes are those of a TIFF, or of a raw format that differs in nothing else.</summary>
    public static bool Begins(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith("II*\0"u8)
        || bytes.StartsWith("MM\0*"u8)
        || bytes.StartsWith("IIU\0"u8)
        || bytes.StartsWith("IIRO"u8)
        || bytes.StartsWith("IIRS"u8)
        || bytes.StartsWith("MMOR"u8);

    public static void Read(FileBytes file, long start, long end, HeaderTags tags)
    {
        if (end - start < 8 || !Begins(file.At(start, 4)))
            throw new NotTakenException(PhotoReason.Malformed);
        new TiffHeader(file, start, end, tags).Read(new ByteOrder(file.At(start, 1)[0] == 'M'));
    }

    private void Read(ByteOrder order)
    {
        if (Directory(order, order.U32(Bytes(4, 4))) is { } exif)
            Directory(order, exif);
    }

    /// <summary>The tags of one directory; gives back where the EXIF directory lies.</summary>
    private uint? Directory(ByteOrder order, uint offset)
    {
        uint? exif = null;
        List<(ushort Tag, ushort Type, int Length, byte[] Place)> wanted = [];
        var count = order.U16(Bytes(offset, 2));
        for (var i = 0; i < count; i++)
        {
            var entry = Bytes(offset + 2 + ((long)EntryLength * i), EntryLength);
            var (tag, type) = (order.U16(entry), order.U16(entry[2..]));
            var length = (long)order.U32(entry[4..]) * TagValue.SizeOf(type);
            if (tag == HeaderTags.ExifDirectory && length == 4)
                exif ??= order.U32(entry[8..]);
            else if (tag == HeaderTags.XmpPacket && length > 4)
                tags.Xmp ??= (start + order.U32(entry[8..]), length);
            else if (HeaderTags.IsWanted(tag) && length is > 0 and <= LongestValue && wanted.Count < 64)
                wanted.Add((tag, type, (int)length, entry[8..].ToArray()));
        }

        foreach (var (tag, type, length, place) in wanted)
        {
            var value = length <= 4 ? place.AsSpan(0, length) : Bytes(order.U32(place), length);
            tags.Add(tag, new(type, value.ToArray(), order));
        }

        return exif;
    }

    private ReadOnlySpan<byte> Bytes(long offset, int count) =>
        offset <= end - start - count ? file.At(start + offset, count) : throw new NotTakenException(PhotoReason.EndsEarly);
}
