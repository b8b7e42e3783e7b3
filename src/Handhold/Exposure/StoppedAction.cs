using System.Globalization;

namespace Handhold;

/// <summary>How fast a frame must be to freeze a moving subject.</summary>
public static class StoppedAction
{
    /// <summary>The slowest exposure that blurs a subject moving straight across by no more than the permitted blur.</summary>
    /// <inheritdoc cref="SlowestExposure(double, double, double, double)" />
    public static ShutterSpeed SlowestExposure(double permittedBlur, double magnification, double subjectSpeed) =>
        SlowestExposure(permittedBlur, magnification, subjectSpeed, 90);

    /// <summary>The slowest exposure that blurs a moving subject by no more than the permitted blur.</summary>
    /// <remarks>t = c / (m v sin θ): the image moves at m v sin θ over the sensor. Checked by golden/action-stopping.</remarks>
    /// <param name="permittedBlur">c, µm on the sensor, positive; see <see cref="Criterion.PermittedBlur"/>.</param>
    /// <param name="magnification">m, image size over object size, positive.</param>
    /// <param name="subjectSpeed">v, mm/s at the subject, positive.</param>
    /// <param name="degreesFromAxis">θ, angle between the motion and the lens's axis, above 0 and at most 90; 90 is straight across.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static ShutterSpeed SlowestExposure(double permittedBlur, double magnification, double subjectSpeed, double degreesFromAxis)
    {
        if (degreesFromAxis is not (> 0 and <= 90))
            throw new ArgumentOutOfRangeException(
                nameof(degreesFromAxis),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The angle is {degreesFromAxis} degrees. Give one above 0 and at most 90, straight across; head-on motion crosses no pixels."
                )
            );
        var across =
            Check.Positive(magnification, "The magnification", "")
            * Check.Positive(subjectSpeed, "The subject's speed", " mm/s")
            * double.SinPi(degreesFromAxis / 180);
        return ShutterSpeed.FromSeconds(Check.Positive(permittedBlur, "The permitted blur", " µm") / 1000 / across);
    }
}
