using System.Buffers.Binary;
using System.Text;

namespace Handhold.Photos.Tests;

/// <summary>Writes TIFF structures: a first directory, an EXIF directory, and the values behind them.</summary>
internal sealed class Tiff(bool bigEndian = false)
{
    private readonly SortedDictionary<ushort, (ushort Type, uint Count, byte[] Bytes)> _first = [];
    private readonly SortedDictionary<ushort, (ushort Type, uint Count, byte[] Bytes)> _exif = [];

    public Tiff Text(ushort tag, string text) => Add(tag, 2, [.. Encoding.UTF8.GetBytes(text), 0]);

    public Tiff Short(ushort tag, ushort value) => Add(tag, 3, U16(value));

    public Tiff Ratio(ushort tag, uint over, uint under) => Add(tag, 5, [.. U32(over), .. U32(under)]);

    public Tiff SignedRatio(ushort tag, int over, int under) => Add(tag, 10, [.. U32((uint)over), .. U32((uint)under)]);

    public Tiff Bytes(ushort tag, byte[] bytes) => Add(tag, 1, bytes);

    /// <summary>A tag with any type, count and value field, true or not.</summary>
    public Tiff Claimed(ushort tag, ushort type, uint count, uint value)
    {
        (tag < 0x8000 ? _first : _exif)[tag] = (type, count, U32(value));
        return this;
    }

    public byte[] ToBytes()
    {
        _first[HeaderTags.ExifDirectory] = (4, 1, []);
        var exifStart = (uint)(8 + Size(_first.Count));
        _first[HeaderTags.ExifDirectory] = (4, 1, U32(exifStart));
        using MemoryStream file = new();
        file.Write(bigEndian ? "MM\0*"u8 : "II*\0"u8);
        file.Write(U32(8));
        var values = exifStart + (uint)Size(_exif.Count);
        using MemoryStream behind = new();
        Write(file, _first, behind, values);
        Write(file, _exif, behind, values);
        file.Write(behind.ToArray());
        return file.ToArray();
    }

    private static int Size(int entries) => 2 + (12 * entries) + 4;

    private Tiff Add(ushort tag, ushort type, byte[] bytes)
    {
        (tag < 0x8000 ? _first : _exif)[tag] = (type, (uint)(bytes.Length / Math.Max(1, TagValue.SizeOf(type))), bytes);
        return this;
    }

    private void Write(
        MemoryStream file,
        SortedDictionary<ushort, (ushort Type, uint Count, byte[] Bytes)> tags,
        MemoryStream behind,
        uint values
    )
    {
        file.Write(U16((ushort)tags.Count));
        foreach (var (tag, (type, count, bytes)) in tags)
        {
            file.Write([.. U16(tag), .. U16(type), .. U32(count)]);
            if (bytes.Length > 4)
            {
                file.Write(U32(values + (uint)behind.Length));
                behind.Write(bytes);
            }
            else
                file.Write([.. bytes, .. new byte[4 - bytes.Length]]);
        }

        file.Write(U32(0));
    }

    private byte[] U16(ushort value)
    {
        var bytes = new byte[2];
        if (bigEndian)
            BinaryPrimitives.WriteUInt16BigEndian(bytes, value);
        else
            BinaryPrimitives.WriteUInt16LittleEndian(bytes, value);
        return bytes;
    }

    private byte[] U32(uint value)
    {
        var bytes = new byte[4];
        if (bigEndian)
            BinaryPrimitives.WriteUInt32BigEndian(bytes, value);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(bytes, value);
        return bytes;
    }
}
