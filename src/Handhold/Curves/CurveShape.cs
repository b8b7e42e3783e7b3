using Handhold.Kernels;

namespace Handhold;

/// <summary>One keeper curve with known numbers.</summary>
/// <remarks>P(x) = floor + (ceiling - floor) / (1 + exp(-b (tau - x))), x in log2 seconds.</remarks>
public sealed record CurveShape
{
    /// <summary>Half point of the uncapped curve, log2 seconds.</summary>
    public required double HalfPoint { get; init; }

    /// <summary>Steepness at half, logits per stop; negative for a rising curve.</summary>
    public required double Steepness { get; init; }

    /// <summary>Rate of very fast frames.</summary>
    public double Ceiling { get; init; } = 1;

    /// <summary>Rate of very slow frames.</summary>
    public double Floor { get; init; }

    /// <summary>Keeper rate at an exposure.</summary>
    public double RateAt(double log2Seconds)
    {
        var (mu, rest) = Elementary.Logistic(Steepness * (HalfPoint - log2Seconds));
        return Floor * rest + Ceiling * mu;
    }

    /// <summary>Exposure (log2 seconds) at which the absolute rate is <paramref name="rate"/>; null when not between floor and ceiling, or when the curve is flat.</summary>
    public double? ExposureFor(double rate) =>
        rate > Floor && rate < Ceiling && Steepness != 0 ? HalfPoint - Math.Log((rate - Floor) / (Ceiling - rate)) / Steepness : null;
}
