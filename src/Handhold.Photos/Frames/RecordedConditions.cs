namespace Handhold.Photos;

/// <summary>Lens, distance, pixels and setup of a photograph, each null where the file says unknown (CIPA DC-008 section 4.6.5).</summary>
internal static class RecordedConditions
{
    private const int MicrometresOfInch = 25_400;
    private const int MicrometresOfCentimetre = 10_000;

    public static (Conditions Conditions, PhotoReason? Remark) Of(HeaderTags tags, SetupLabels labels)
    {
        var (focal, distance) = (tags[HeaderTags.FocalLength]?.Positive, tags[HeaderTags.SubjectDistance]?.Positive);
        var impossible = focal is { } f && distance is { } d && !Magnification.CanFocus(f, d);
        return (
            Conditions.None with
            {
                Setup = labels.Of(tags),
                FocalLength = focal,
                EquivalentFocalLength = tags[HeaderTags.EquivalentFocalLength]?.Positive,
                PixelPitch = Pitch(tags),
                SubjectDistance = impossible ? null : distance,
            },
            impossible ? PhotoReason.ImpossibleDistance : null
        );
    }

    /// <summary>µm: the unit's length over the pixels in it. Unit 2 is the inch and the default, 3 the centimetre.</summary>
    private static double? Pitch(HeaderTags tags)
    {
        double? unit = (tags[HeaderTags.FocalPlaneUnit]?.Whole ?? 2) switch
        {
            2 => MicrometresOfInch,
            3 => MicrometresOfCentimetre,
            _ => null,
        };
        return unit / tags[HeaderTags.FocalPlaneResolution]?.Positive;
    }
}
