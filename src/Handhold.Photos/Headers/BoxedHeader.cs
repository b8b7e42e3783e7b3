namespace Handhold.Photos;

/// <summary>Reads photographs in boxes: HEIF (ISO 23008-12) and the raw files of Canon that look alike.</summary>
internal static class BoxedHeader
{
    private const int UuidLength = 16;

    /// <summary>The box of Canon's metadata: CMT1 is the first directory, CMT2 the EXIF directory, each a TIFF structure.</summary>
    private static ReadOnlySpan<byte> CanonUuid =>
        [0x85, 0xC0, 0xB6, 0x87, 0x82, 0x0F, 0x11, 0xE0, 0x81, 0x11, 0xF4, 0xCE, 0x46, 0x2B, 0x6A, 0x48];

    /// <summary>The box of an XMP packet (ISO 16684-3).</summary>
    private static ReadOnlySpan<byte> XmpUuid =>
        [0xBE, 0x7A, 0xCF, 0xCB, 0x97, 0xA9, 0x42, 0xE8, 0x9C, 0x71, 0x99, 0x94, 0x91, 0xE3, 0xAF, 0xAC];

    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes[4..].StartsWith("ftyp"u8);

    public static void Read(FileBytes file, HeaderTags tags)
    {
        foreach (var box in Box.Within(file, 0, file.Length))
        {
            if (box.Type == "meta")
                HeifItems.Read(file, box, tags);
            else if (box.Type == "moov")
                Canon(file, box, tags);
            else if (box.Type == "uuid" && Is(file, box, XmpUuid))
                tags.Xmp ??= (box.Start + UuidLength, box.End - box.Start - UuidLength);
        }
    }

    private static void Canon(FileBytes file, Box moov, HeaderTags tags)
    {
        foreach (var box in Box.Within(file, moov.Start, moov.End).Where(box => box.Type == "uuid" && Is(file, box, CanonUuid)))
        foreach (var part in Box.Within(file, box.Start + UuidLength, box.End).Where(part => part.Type is "CMT1" or "CMT2"))
            TiffHeader.Read(file, part.Start, part.End, tags);
    }

    private static bool Is(FileBytes file, Box box, ReadOnlySpan<byte> uuid) =>
        box.End - box.Start >= UuidLength && file.At(box.Start, UuidLength).SequenceEqual(uuid);
}
