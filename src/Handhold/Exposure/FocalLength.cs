namespace Handhold;

/// <summary>Focal lengths compared across sensor sizes.</summary>
public static class FocalLength
{
    /// <summary>Crop factor of a sensor: the diagonal of 24 x 36 mm, 43.27 mm, over its own.</summary>
    /// <param name="width">Sensor width, mm, positive.</param>
    /// <param name="height">Sensor height, mm, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not positive and finite.</exception>
    public static double CropFactor(double width, double height) =>
        double.Hypot(24, 36)
        / double.Hypot(Check.Positive(width, "The sensor's width", " mm"), Check.Positive(height, "The sensor's height", " mm"));

    /// <summary>Focal length that gives the same view on 24 x 36 mm, mm: focal length times crop.</summary>
    /// <remarks>Some cameras already record the equivalent, or include a converter: never multiply twice.</remarks>
    /// <param name="focalLength">Focal length in use, mm, positive.</param>
    /// <param name="crop">Crop factor, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive and finite.</exception>
    public static double Equivalent(double focalLength, double crop) =>
        Check.Positive(focalLength, "The focal length", " mm") * Check.Positive(crop, "The crop factor", "");

    /// <summary>The rule of thumb for hand-held frames, 1 s over the equivalent focal length in mm; a guide, not a measurement.</summary>
    /// <remarks>Common practice without a source. Blur b = f w t makes it the claim that 1.7 degrees a second blur 30 µm. Checked by golden/reciprocal-rule.</remarks>
    /// <param name="equivalent">Equivalent focal length, mm, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The focal length is not positive and finite.</exception>
    public static ShutterSpeed ReciprocalRule(double equivalent) => ReciprocalRule(equivalent, 0);

    /// <summary>The rule of thumb near a subject, 1 s over f (1 + m)²: rotation about the sensor, no account of the hand's translation.</summary>
    /// <param name="equivalent">Equivalent focal length, mm, positive.</param>
    /// <param name="magnification">Image size over object size, from 0 up.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static ShutterSpeed ReciprocalRule(double equivalent, double magnification)
    {
        var closer = 1 + Check.NotNegative(magnification, "The magnification", "");
        return ShutterSpeed.OneOver(Check.Positive(equivalent, "The equivalent focal length", " mm") * closer * closer);
    }
}
