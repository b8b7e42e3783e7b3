using System.Collections.Immutable;
using System.Globalization;

namespace Handhold;

public sealed partial record Conditions
{
    private readonly OtherColumns _others = OtherColumns.None;

    /// <summary>Names of the conditions that have a property of their own, as columns of a table are called.</summary>
    public static ImmutableArray<string> ColumnNames { get; } =
    [
        "photographer",
        "setup",
        "criterion",
        "judge",
        "cause",
        "session",
        "burst",
        "burst_position",
        "order",
        "focal_mm",
        "crop",
        "focal_eq_mm",
        "pixel_um",
        "stabiliser_stops",
        "stabiliser_mode",
        "support",
        "magnification",
        "subject_distance_m",
        "subject_motion",
        "subject_speed_mm_s",
    ];

    /// <summary>A condition by its column name, as text: numbers in their shortest exact form. Null when not recorded.</summary>
    /// <param name="column">One of <see cref="ColumnNames"/>, or a column of <see cref="Others"/>.</param>
    public string? this[string column] =>
        column switch
        {
            "photographer" => Photographer,
            "setup" => Setup,
            "criterion" => Criterion?.Name,
            "judge" => Judge,
            "cause" => Cause,
            "session" => Session,
            "burst" => Burst,
            "burst_position" => Text(BurstPosition),
            "order" => Text(Order),
            "focal_mm" => Text(FocalLength),
            "crop" => Text(Crop),
            "focal_eq_mm" => Text(EquivalentFocalLength),
            "pixel_um" => Text(PixelPitch),
            "stabiliser_stops" => Text(StabiliserStops),
            "stabiliser_mode" => StabiliserMode,
            "support" => Support,
            "magnification" => Text(Magnification),
            "subject_distance_m" => Text(SubjectDistance),
            "subject_motion" => SubjectMotion,
            "subject_speed_mm_s" => Text(SubjectSpeed),
            _ => Others.GetValueOrDefault(column),
        };

    /// <summary>Names of all columns that were recorded.</summary>
    internal IEnumerable<string> Recorded => ColumnNames.Concat(Others.Keys).Where(column => this[column] is not null);

    private static string? Text(double? value) => value?.ToString("R", CultureInfo.InvariantCulture);
}
