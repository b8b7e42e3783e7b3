namespace Handhold.Photos;

/// <summary>Exposure time of a photograph: ExposureTime, else 2^-Tv of ShutterSpeedValue (CIPA DC-008 section 4.6.5 and annex C).</summary>
internal static class RecordedExposure
{
    /// <summary>Stops by which the two may differ unremarked: marked speeds are rounded by up to 0.093.</summary>
    private const double Apart = 0.1;

    /// <summary>Tv of the shortest and longest exposures that a value can mean: about a microsecond and an hour.</summary>
    private const double Shortest = 20;
    private const double Longest = -12;

    /// <exception cref="NotTakenException">Nothing recorded is an exposure time.</exception>
    public static (ShutterSpeed Speed, PhotoReason? Remark) Of(HeaderTags tags)
    {
        var apex = tags[HeaderTags.ShutterSpeedValue]?.Quotient is { } value and >= Longest and <= Shortest
            ? ShutterSpeed.FromApex(value)
            : (ShutterSpeed?)null;
        if (tags[HeaderTags.ExposureTime]?.Positive is { } seconds)
        {
            var speed = ShutterSpeed.FromSeconds(seconds);
            return (speed, apex?.IsSameSpeed(speed, Apart) == false ? PhotoReason.ExposuresDiffer : null);
        }

        if (apex is { } only)
            return (only, PhotoReason.ApexOnly);
        throw new NotTakenException(
            tags[HeaderTags.ExposureTime] is null && tags[HeaderTags.ShutterSpeedValue] is null
                ? PhotoReason.NoExposure
                : PhotoReason.ImpossibleExposure
        );
    }
}
