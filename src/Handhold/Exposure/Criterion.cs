namespace Handhold;

/// <summary>What was called sharp: on a print, at pixels, or by a rule of the user's own.</summary>
/// <param name="Name"><c>print</c>, <c>pixel</c>, or the user's own name. Compared exactly.</param>
public sealed record Criterion(string Name)
{
    private const double PrintBlur = 30; // µm on 24 x 36 mm: about 1/1440 of the diagonal
    private const double UsualPixelPitch = 6; // µm: 24 million pixels on 24 x 36 mm

    /// <summary>Judged on a print: 30 µm of blur on a 24 x 36 mm frame pass.</summary>
    public static Criterion Print { get; } = new("print");

    /// <summary>Judged at single pixels, on a screen at 100 %.</summary>
    public static Criterion Pixel { get; } = new("pixel");

    /// <summary>The criterion's name, not blank.</summary>
    public string Name { get; } =
        !string.IsNullOrWhiteSpace(Name)
            ? Name
            : throw new ArgumentException(
                "The criterion's name is blank. Name what was called sharp, such as print or pixel.",
                nameof(Name)
            );

    /// <summary>Blur that still passes, µm on the sensor.</summary>
    /// <remarks>
    /// Print: 30 µm over the crop factor. Pixel: one pixel pitch. Unknown, or the user's own: the geometric mean of the two, for want of better.
    /// </remarks>
    /// <param name="criterion">What was called sharp; null when unknown.</param>
    /// <param name="crop">Crop factor, positive; null is taken for 1.</param>
    /// <param name="pixelPitch">Distance between pixels, µm, positive; null is taken for 6 µm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not positive and finite.</exception>
    public static double PermittedBlur(Criterion? criterion, double? crop, double? pixelPitch)
    {
        var print = PrintBlur / Check.Positive(crop ?? 1, "The crop factor", "");
        var pixel = Check.Positive(pixelPitch ?? UsualPixelPitch, "The pixel pitch", " µm");
        return criterion == Print ? print
            : criterion == Pixel ? pixel
            : Math.Sqrt(print * pixel);
    }

    /// <summary>The criterion's name.</summary>
    public override string ToString() => Name;
}
