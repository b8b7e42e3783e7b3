using System.Text;

namespace Handhold.Photos.Tests;

/// <summary>Writes JPEGs that have segments and no picture.</summary>
internal sealed class Jpeg
{
    private readonly List<byte> _bytes = [0xFF, 0xD8];

    public Jpeg Exif(Tiff tiff) => Exif(tiff.ToBytes());

    public Jpeg Exif(byte[] tiff) => Segment(0xE1, [.. "Exif\0\0"u8, .. tiff]);

    public Jpeg Xmp(string packet) => Segment(0xE1, [.. "http://ns.adobe.com/xap/1.0/\0"u8, .. Encoding.UTF8.GetBytes(packet)]);

    public Jpeg Segment(byte marker, byte[] body)
    {
        var length = body.Length + 2;
        _bytes.AddRange([0xFF, marker, (byte)(length >> 8), (byte)length, .. body]);
        return this;
    }

    public byte[] ToBytes() => [.. _bytes, 0xFF, 0xDA, 0x00, 0x02, 0xFF, 0xD9];
}
