namespace Handhold;

/// <summary>An exposure time: any positive finite number of seconds, also far outside what cameras offer.</summary>
/// <remarks>
/// Equality is exact, bit for bit, so cells pool only what was recorded alike; <see cref="IsSameSpeed"/> groups for display.
/// Comparison is by time: the greater speed is the slower one. <c>default</c> is no speed, and reading it says so.
/// </remarks>
public readonly partial record struct ShutterSpeed : IComparable<ShutterSpeed>
{
    /// <summary>Stops within which two recorded times are the same speed to a reader: 0.02, about 1.4 %.</summary>
    /// <remarks>Wider than the rounding of 0.0167 and of single precision, narrower than 1/60 against 1/61 or any two marks of one series.</remarks>
    public const double SameSpeedTolerance = 0.02;

    private readonly double _seconds;

    private ShutterSpeed(double seconds) => _seconds = seconds;

    /// <summary>The exposure time in seconds: positive and finite.</summary>
    /// <exception cref="InvalidOperationException">This is <c>default</c>, which is no speed.</exception>
    public double Seconds =>
        _seconds > 0
            ? _seconds
            : throw new InvalidOperationException(
                "This shutter speed was never set. Make one with ShutterSpeed.OneOver(60), ShutterSpeed.FromSeconds(0.5) or ShutterSpeed.Parse(\"1/60\")."
            );

    /// <summary>log2 of the exposure time over one second; larger is slower.</summary>
    public double Log2Seconds => Math.Log2(Seconds);

    /// <summary>1/<paramref name="denominator"/> s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The denominator, or the time, is not positive and finite.</exception>
    public static ShutterSpeed OneOver(double denominator) => FromSeconds(1 / Check.Positive(denominator, "The denominator", ""));

    /// <summary>An exposure time in seconds, positive and finite.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is not positive and finite.</exception>
    public static ShutterSpeed FromSeconds(double seconds) => new(Check.Positive(seconds, "The exposure time", " s"));

    /// <summary>2 to the power of <paramref name="log2Seconds"/> seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is not positive and finite.</exception>
    public static ShutterSpeed FromLog2Seconds(double log2Seconds) => FromSeconds(Math.Pow(2, log2Seconds));

    /// <summary>The speed of an APEX time value: t = 2^-Tv seconds.</summary>
    /// <param name="timeValue">Tv in stops; 0 is 1 s, 6 is 1/64 s.</param>
    /// <remarks>Source: CIPA DC-008 (Exif), ShutterSpeedValue. Checked by golden/apex.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The time is not positive and finite.</exception>
    public static ShutterSpeed FromApex(double timeValue) => FromLog2Seconds(-timeValue);

    /// <summary>Positive when this speed is slower than <paramref name="reference"/>.</summary>
    public Stops SlowerThan(ShutterSpeed reference)
    {
        var ratio = Seconds / reference.Seconds;
        return new(double.IsNormal(ratio) ? Math.Log2(ratio) : Log2Seconds - reference.Log2Seconds);
    }

    /// <summary>Whether the two are at most <paramref name="tolerance"/> stops apart: one speed to a reader, not to a fit.</summary>
    /// <param name="other">The other speed.</param>
    /// <param name="tolerance">In stops, from 0 up.</param>
    public bool IsSameSpeed(ShutterSpeed other, double tolerance = SameSpeedTolerance) => Math.Abs(SlowerThan(other).Value) <= tolerance;

    /// <summary>By exposure time, fastest first.</summary>
    public int CompareTo(ShutterSpeed other) => _seconds.CompareTo(other._seconds);

    /// <summary>Whether <paramref name="left"/> is the faster.</summary>
    public static bool operator <(ShutterSpeed left, ShutterSpeed right) => left.Seconds < right.Seconds;

    /// <summary>Whether <paramref name="left"/> is not the slower.</summary>
    public static bool operator <=(ShutterSpeed left, ShutterSpeed right) => left.Seconds <= right.Seconds;

    /// <summary>Whether <paramref name="left"/> is the slower.</summary>
    public static bool operator >(ShutterSpeed left, ShutterSpeed right) => left.Seconds > right.Seconds;

    /// <summary>Whether <paramref name="left"/> is not the faster.</summary>
    public static bool operator >=(ShutterSpeed left, ShutterSpeed right) => left.Seconds >= right.Seconds;
}
