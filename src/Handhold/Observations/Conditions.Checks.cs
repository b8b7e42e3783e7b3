using System.Globalization;

namespace Handhold;

public sealed partial record Conditions
{
    /// <summary>Focal length that gives the same view on 24 x 36 mm, mm: as recorded, or focal length times crop; null when neither is known.</summary>
    public double? EffectiveEquivalentFocalLength => EquivalentFocalLength ?? FocalLength * Crop;

    /// <summary>Image size over object size: as recorded, or from sensor-to-subject distance and focal length; null when neither is known.</summary>
    public double? EffectiveMagnification =>
        Magnification
        ?? (
            FocalLength is { } focal && SubjectDistance is { } distance ? Handhold.Magnification.FromSensorDistance(focal, distance) : null
        );

    /// <summary>Rated stops of the stabiliser, 0 when its mode is <c>off</c>; null when unknown.</summary>
    public double? EffectiveStabiliserStops => StabiliserMode == "off" ? 0 : StabiliserStops;

    /// <summary>What is possible one by one, but not together: the problem and the remedy, or null.</summary>
    internal (string Problem, string Remedy)? Contradiction() =>
        Magnification is null
        && FocalLength is { } focal
        && SubjectDistance is { } distance
        && !Handhold.Magnification.CanFocus(focal, distance)
            ? (
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a {focal} mm lens cannot focus {distance} m from the sensor, less than four focal lengths."
                ),
                "Lenses that shorten when focused close do this: write the magnification instead of the distance."
            )
            : null;

    private static string? Label(string? value, string column) =>
        value is null || !string.IsNullOrWhiteSpace(value)
            ? value
            : throw new CellException(column, "the label is blank.", "Leave out what was not recorded.");

    private static double? Positive(double? value, string column) => InRange(value, column, value > 0, "a finite number above 0");

    private static double? NotNegative(double? value, string column) => InRange(value, column, value >= 0, "a finite number from 0 up");

    private static double? InRange(double? value, string column, bool inRange, string wanted) =>
        value is null || (inRange && double.IsFinite(value.Value))
            ? value
            : throw new CellException(
                column,
                string.Create(CultureInfo.InvariantCulture, $"{value} cannot be."),
                $"Give {wanted}, and leave out what was not recorded."
            );
}
