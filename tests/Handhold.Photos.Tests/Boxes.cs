using System.Buffers.Binary;
using System.Text;

namespace Handhold.Photos.Tests;

/// <summary>Writes files of boxes: HEIF, and raw files of Canon's kind.</summary>
internal static class Boxes
{
    private static readonly Guid s_canon = new("85c0b687-820f-11e0-8111-f4ce462b6a48");

    /// <summary>A HEIF whose items 1 and 2 are EXIF and XMP.</summary>
    public static byte[] Heif(byte[] tiff, string xmp)
    {
        byte[] exif = [0, 0, 0, 6, .. "Exif\0\0"u8, .. tiff];
        var packet = Encoding.UTF8.GetBytes(xmp);
        var start = Beginning(0, 0).Length + 8;
        return [.. Beginning(start, start + exif.Length), .. Box("mdat", [.. exif, .. packet])];

        byte[] Beginning(int exifAt, int xmpAt) =>
            [
                .. Box("ftyp", "heic\0\0\0\0mif1heic"u8.ToArray()),
                .. Box(
                    "meta",
                    [
                        .. U32(0),
                        .. Box("hdlr", [.. U32(0), .. U32(0), .. "pict"u8, .. new byte[13]]),
                        .. Box(
                            "iinf",
                            [
                                .. U32(0),
                                .. U16(2),
                                .. Box("infe", [2, 0, 0, 0, .. U16(1), .. U16(0), .. "Exif\0"u8]),
                                .. Box("infe", [2, 0, 0, 0, .. U16(2), .. U16(0), .. "mime\0application/rdf+xml\0"u8]),
                            ]
                        ),
                        .. Box(
                            "iloc",
                            [
                                .. U32(0),
                                0x44,
                                0x00,
                                .. U16(2),
                                .. U16(1),
                                .. U16(0),
                                .. U16(1),
                                .. U32(exifAt),
                                .. U32(exif.Length),
                                .. U16(2),
                                .. U16(0),
                                .. U16(1),
                                .. U32(xmpAt),
                                .. U32(packet.Length),
                            ]
                        ),
                    ]
                ),
            ];
    }

    /// <summary>Camera and lens in one TIFF, the exposure in another.</summary>
    public static byte[] Canon(byte[] first, byte[] exif) =>
        [
            .. Box("ftyp", "crx \0\0\0\u0001crx isom"u8.ToArray()),
            .. Box("moov", Box("uuid", [.. s_canon.ToByteArray(bigEndian: true), .. Box("CMT1", first), .. Box("CMT2", exif)])),
            .. Box("mdat", new byte[100]),
        ];

    public static byte[] Box(string type, byte[] body) => [.. U32(body.Length + 8), .. Encoding.Latin1.GetBytes(type), .. body];

    private static byte[] U16(int value) => [(byte)(value >> 8), (byte)value];

    private static byte[] U32(int value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        return bytes;
    }
}
