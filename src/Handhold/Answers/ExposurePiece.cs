namespace Handhold;

/// <summary>One piece of an <see cref="ExposureSet"/>; an absent end is unbounded.</summary>
public sealed class ExposurePiece
{
    internal ExposurePiece(double? lower, double? upper) => (Lower, Upper) = (lower, upper);

    /// <summary>Fast end, log2 seconds; null is unbounded.</summary>
    public double? Lower { get; }

    /// <summary>Slow end, log2 seconds; null is unbounded.</summary>
    public double? Upper { get; }
}
