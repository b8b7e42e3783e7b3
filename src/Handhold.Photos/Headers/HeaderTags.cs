namespace Handhold.Photos;

/// <summary>What the header of a photograph says: the few tags that are wanted, and where its XMP lies.</summary>
internal sealed class HeaderTags
{
    /// <summary>Numbers of tags (CIPA DC-008; TIFF 6.0).</summary>
    public const ushort Model = 0x0110;
    public const ushort XmpPacket = 0x02BC;
    public const ushort ExposureTime = 0x829A;
    public const ushort ExifDirectory = 0x8769;
    public const ushort TakenAt = 0x9003;
    public const ushort ShutterSpeedValue = 0x9201;
    public const ushort SubjectDistance = 0x9206;
    public const ushort FocalLength = 0x920A;
    public const ushort SubSecond = 0x9291;
    public const ushort FocalPlaneResolution = 0xA20E;
    public const ushort FocalPlaneUnit = 0xA210;
    public const ushort EquivalentFocalLength = 0xA405;
    public const ushort BodySerial = 0xA431;
    public const ushort LensModel = 0xA434;
    public const ushort LensSerial = 0xA435;
    public const ushort CompositeImage = 0xA460;

    private readonly Dictionary<ushort, TagValue> _values = [];

    /// <summary>Where the XMP packet lies in the file.</summary>
    public (long Offset, long Length)? Xmp { get; set; }

    public TagValue? this[ushort tag] => _values.TryGetValue(tag, out var value) ? value : null;

    public static bool IsWanted(ushort tag) =>
        tag
            is Model
                or ExposureTime
                or TakenAt
                or ShutterSpeedValue
                or SubjectDistance
                or FocalLength
                or SubSecond
                or FocalPlaneResolution
                or FocalPlaneUnit
                or EquivalentFocalLength
                or BodySerial
                or LensModel
                or LensSerial
                or CompositeImage;

    /// <summary>Keeps the first value of a tag.</summary>
    public void Add(ushort tag, TagValue value) => _values.TryAdd(tag, value);
}
