using System.Buffers.Binary;
using System.Text;

namespace Handhold.Photos;

/// <summary>Finds the items of a HEIF file that hold EXIF and XMP: item information and item location (ISO 14496-12 sections 8.11.3 and 8.11.6).</summary>
internal static class HeifItems
{
    private const int FullBox = 4;

    public static void Read(FileBytes file, Box meta, HeaderTags tags)
    {
        var parts = Box.Within(file, meta.Start + FullBox, meta.End).Where(box => box.Type is "iinf" or "iloc").ToArray();
        var (exif, xmp) = Named(file, parts.FirstOrDefault(box => box.Type == "iinf"));
        if (exif is null && xmp is null)
            return;
        foreach (var (item, start, length) in Places(file, parts.FirstOrDefault(box => box.Type == "iloc")))
        {
            if (item == xmp)
                tags.Xmp ??= (start, length);
            else if (item == exif && length > 4)
            {
                long skipped = BinaryPrimitives.ReadUInt32BigEndian(file.At(start, 4));
                TiffHeader.Read(file, start + 4 + skipped, start + length, tags);
            }
        }
    }

    /// <summary>The numbers of the first EXIF item and of the first XMP item.</summary>
    private static (uint? Exif, uint? Xmp) Named(FileBytes file, Box list)
    {
        if (list.Type is null)
            return default;
        (uint? exif, uint? xmp) = (null, null);
        var counted = file.At(list.Start, 1)[0] == 0 ? 2 : 4;
        foreach (var entry in Box.Within(file, list.Start + FullBox + counted, list.End).Where(box => box.Type == "infe"))
        {
            var version = file.At(entry.Start, 1)[0];
            if (version is not (2 or 3))
                continue;
            BoxFields fields = new(file, entry.Start + FullBox, entry.End);
            var item = (uint)fields.Number(version == 2 ? 2 : 4);
            fields.Number(2);
            var type = (uint)fields.Number(4);
            if (type == 0x45786966) // Exif
                exif ??= item;
            else if (type == 0x6D696D65 && IsXmp(file, entry)) // mime
                xmp ??= item;
        }

        return (exif, xmp);
    }

    private static bool IsXmp(FileBytes file, Box entry) =>
        Encoding
            .Latin1.GetString(file.At(entry.Start, (int)Math.Min(entry.End - entry.Start, 256)))
            .Contains("application/rdf+xml", StringComparison.Ordinal);

    /// <summary>Where items lie that are one piece of the file.</summary>
    private static IEnumerable<(uint Item, long Start, long Length)> Places(FileBytes file, Box list)
    {
        if (list.Type is null)
            yield break;
        var version = file.At(list.Start, 1)[0];
        BoxFields fields = new(file, list.Start + FullBox, list.End);
        var sizes = fields.Number(2);
        var (offsetSize, lengthSize, baseSize) = ((int)(sizes >> 12) & 15, (int)(sizes >> 8) & 15, (int)(sizes >> 4) & 15);
        var indexSize = version == 0 ? 0 : (int)sizes & 15;
        for (var left = fields.Number(version < 2 ? 2 : 4); left > 0; left--)
        {
            var item = (uint)fields.Number(version < 2 ? 2 : 4);
            var inFile = version == 0 || (fields.Number(2) & 15) == 0;
            fields.Number(2);
            var start = fields.Number(baseSize);
            var extents = fields.Number(2);
            if (extents == 0)
                continue;
            fields.Skip(indexSize);
            start += fields.Number(offsetSize);
            var length = fields.Number(lengthSize);
            fields.Skip((extents - 1) * (indexSize + offsetSize + lengthSize));
            if (inFile && extents == 1)
                yield return (item, start, length);
        }
    }
}
