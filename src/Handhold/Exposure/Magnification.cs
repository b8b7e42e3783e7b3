using System.Globalization;

namespace Handhold;

/// <summary>Image size over object size, from what a photographer knows. A thin lens is assumed; checked by golden/magnification.</summary>
/// <remarks>
/// Lenses that focus inside shorten when close, and recorded distances are coarse: a known object's size in pixels is the best evidence, distance the weakest.
/// </remarks>
public static class Magnification
{
    /// <summary>From the distance between sensor and subject, D = f (2 + m + 1/m): the smaller of its two magnifications.</summary>
    /// <remarks>m = (K - sqrt(K² - 4)) / 2 with K = D/f - 2, computed without cancellation. D = 4 f is life size.</remarks>
    /// <param name="focalLength">Focal length, mm, positive.</param>
    /// <param name="distance">Sensor to subject, m, at least four focal lengths.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive and finite, or the distance is below four focal lengths.</exception>
    public static double FromSensorDistance(double focalLength, double distance) =>
        CanFocus(Check.Positive(focalLength, "The focal length", " mm"), Check.Positive(distance, "The distance", " m"))
            ? SmallerRoot(Math.Max(2, (distance * 1000 / focalLength) - 2))
            : throw new ArgumentOutOfRangeException(
                nameof(distance),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A {focalLength} mm lens cannot focus {distance} m from the sensor: four focal lengths are the least. Give the magnification itself."
                )
            );

    /// <summary>Whether a lens of that focal length can focus so close: the distance is at least four focal lengths, give or take the rounding of the two.</summary>
    /// <param name="focalLength">Focal length, mm.</param>
    /// <param name="distance">Sensor to subject, m.</param>
    public static bool CanFocus(double focalLength, double distance) => distance * 1000 >= 4 * focalLength * (1 - 1e-12);

    /// <summary>From the distance between lens (its front principal plane) and subject, m = f / (u - f).</summary>
    /// <param name="focalLength">Focal length, mm, positive.</param>
    /// <param name="distance">Lens to subject, m, more than one focal length.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive and finite, or the subject is within the focal length.</exception>
    public static double FromLensDistance(double focalLength, double distance)
    {
        var beyond = (Check.Positive(distance, "The distance", " m") * 1000) - Check.Positive(focalLength, "The focal length", " mm");
        return beyond > 0
            ? focalLength / beyond
            : throw new ArgumentOutOfRangeException(
                nameof(distance),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A {focalLength} mm lens forms no image of a subject {distance} m away, within its focal length. Check the two, or give the magnification itself."
                )
            );
    }

    /// <summary>From an object of known size: pixels times pixel pitch over its size.</summary>
    /// <param name="objectSize">Size of the object, mm, positive.</param>
    /// <param name="pixels">Its size in the picture, pixels of the sensor, positive.</param>
    /// <param name="pixelPitch">Distance between pixels, µm, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive and finite.</exception>
    public static double FromObject(double objectSize, double pixels, double pixelPitch) =>
        Check.Positive(pixels, "The size in the picture", " pixels")
        * (Check.Positive(pixelPitch, "The pixel pitch", " µm") / 1000)
        / Check.Positive(objectSize, "The object's size", " mm");

    private static double SmallerRoot(double k) => 2 / (k + Math.Sqrt((k - 2) * (k + 2)));
}
