using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using XmpCore;
using XmpCore.Options;

namespace Handhold.Photos;

/// <summary>Reads rating and label of an XMP packet: xmp:Rating, -1 or 0 to 5, and xmp:Label (ISO 16684-1, XMP basic namespace).</summary>
internal static class XmpMark
{
    /// <summary>Bytes of a sidecar at most.</summary>
    public const int LongestSidecar = 4 << 20;

    private const string Basic = "http://ns.adobe.com/xap/1.0/";
    private const int Deepest = 64;
    private const int MostNodes = 10_000;

    /// <summary>Null where the packet is not XMP, or larger, deeper or richer than any photograph needs.</summary>
    public static Mark? Of(byte[] packet)
    {
        try
        {
            Refuse(packet);
            using var reader = Reader(packet);
            return Of(XmpMetaFactory.ParseFromXDocument(XDocument.Load(reader), new ParseOptions { OmitNormalization = true }));
        }
#pragma warning disable CA1031 // text from strangers, read by code of others: whatever goes wrong, there is no rating
        catch (Exception)
#pragma warning restore CA1031
        {
            return null;
        }
    }

    private static Mark? Of(IXmpMeta meta)
    {
        var (rating, label) = (meta.GetPropertyString(Basic, "Rating"), meta.GetPropertyString(Basic, "Label"));
        double? stars = null;
        if (!string.IsNullOrWhiteSpace(rating))
        {
            if (
                !double.TryParse(rating, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                || value is not (-1 or (>= 0 and <= 5))
            )
                return null;
            stars = value;
        }

        return new(stars, string.IsNullOrWhiteSpace(label) ? null : label.Trim());
    }

    /// <summary>Looks before anything recursive does: no entities, not too deep, not too many.</summary>
    private static void Refuse(byte[] packet)
    {
        using var reader = Reader(packet);
        var nodes = 0;
        while (reader.Read())
        {
            nodes += 1 + reader.AttributeCount;
            if (reader.Depth > Deepest || nodes > MostNodes)
                throw new XmlException();
        }
    }

    private static XmlReader Reader(byte[] packet) =>
        XmlReader.Create(
            new MemoryStream(packet, writable: false),
            new XmlReaderSettings
            {
                DtdProcessing = DtdProcessing.Prohibit,
                XmlResolver = null,
                CloseInput = true,
                IgnoreWhitespace = true,
            }
        );
}
