namespace Handhold.Curves;

/// <summary>A part of a <see cref="HalfPointMixture"/>: with this probability, the half point plus a constant.</summary>
/// <param name="Weight">Probability of the part.</param>
/// <param name="HalfPoint">Density of the half point.</param>
/// <param name="Shift">The constant, log2 seconds; minus infinity puts the part below everything, infinity above.</param>
internal readonly record struct MixturePart(double Weight, HalfPoint HalfPoint, double Shift)
{
    internal double Cdf(double t) =>
        double.IsNegativeInfinity(Shift) ? 1
        : double.IsPositiveInfinity(Shift) ? 0
        : HalfPoint.Cdf(t - Shift);
}
