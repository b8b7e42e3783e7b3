namespace Handhold;

/// <summary>The additive exposure arithmetic that cameras store, in stops. Source: CIPA DC-008 (Exif). Checked by golden/apex.</summary>
public static class Apex
{
    /// <summary>Tv = -log2(t / 1 s); larger is faster. <see cref="ShutterSpeed.FromApex"/> goes back.</summary>
    public static double TimeValue(ShutterSpeed speed) => -speed.Log2Seconds;

    /// <summary>Av = 2 log2 N; larger is a smaller aperture.</summary>
    /// <param name="fNumber">N, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The f-number is not positive and finite.</exception>
    public static double ApertureValue(double fNumber) => 2 * Math.Log2(Check.Positive(fNumber, "The f-number", ""));

    /// <summary>Ev = Av + Tv; larger is less light on the sensor.</summary>
    /// <param name="fNumber">N, positive.</param>
    /// <param name="speed">The shutter speed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The f-number is not positive and finite.</exception>
    public static double ExposureValue(double fNumber, ShutterSpeed speed) => ApertureValue(fNumber) + TimeValue(speed);
}
