using System.Globalization;

namespace Handhold;

/// <summary>An exposure time. Equality is exact; use <see cref="SlowerThan"/> for distances.</summary>
public readonly record struct ShutterSpeed
{
    private readonly double _seconds;

    private ShutterSpeed(double seconds) => _seconds = seconds;

    /// <summary>The exposure time in seconds: positive and finite.</summary>
    public double Seconds => _seconds;

    /// <summary>log2 of the exposure time over one second; larger is slower.</summary>
    public double Log2Seconds => Math.Log2(Seconds);

    /// <summary>1/<paramref name="denominator"/> s.</summary>
    public static ShutterSpeed OneOver(double denominator) => FromSeconds(1 / denominator);

    /// <summary>An exposure time in seconds.</summary>
    public static ShutterSpeed FromSeconds(double seconds) => new(seconds);

    /// <summary>2 to the power of <paramref name="log2Seconds"/> seconds.</summary>
    public static ShutterSpeed FromLog2Seconds(double log2Seconds) => FromSeconds(Math.Pow(2, log2Seconds));

    /// <summary>Positive when this speed is slower than <paramref name="reference"/>.</summary>
    public Stops SlowerThan(ShutterSpeed reference) => new(Math.Log2(Seconds / reference.Seconds));

    /// <summary>The speed as it is written on cameras.</summary>
    public override string ToString() => Seconds.ToString(CultureInfo.InvariantCulture) + " s";
}
