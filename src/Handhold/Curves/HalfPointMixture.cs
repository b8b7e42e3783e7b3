using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The distribution of a quantity that is, within each part, the half point plus a constant.</summary>
internal sealed class HalfPointMixture
{
    private readonly ImmutableArray<MixturePart> _parts;
    private readonly double _total;

    /// <param name="parts">Parts; their weights need not sum to one.</param>
    internal HalfPointMixture(ImmutableArray<MixturePart> parts)
    {
        (_parts, _total) = (parts, parts.Sum(p => p.Weight));
        BelowEverything = parts.Sum(p => double.IsNegativeInfinity(p.Shift) ? p.Weight : 0) / _total;
    }

    /// <summary>The half point itself.</summary>
    internal HalfPointMixture(ImmutableArray<CurveAtom> atoms)
        : this([.. atoms.Select(a => new MixturePart(a.Weight, a.HalfPoint, 0))]) { }

    /// <summary>Probability that the quantity lies below everything.</summary>
    internal double BelowEverything { get; }

    /// <summary>P(quantity at most <paramref name="t"/>).</summary>
    internal double Cdf(double t)
    {
        var sum = 0.0;
        foreach (var part in _parts)
            sum += part.Weight * part.Cdf(t);
        return Math.Min(sum / _total, 1);
    }

    /// <summary>Equal-tailed interval; without a lower end where that much lies below everything, not reachable where it has no upper one.</summary>
    internal ExposureSet Set(double level)
    {
        var (low, median, high) = (Quantile((1 - level) / 2), Quantile(0.5), Quantile((1 + level) / 2));
        return double.IsInfinity(high) ? new(ExposureSetKind.NotReachable, [], "equalTailed")
            : double.IsInfinity(low) || double.IsInfinity(median) ? new(ExposureSetKind.AtMost, [new(null, high)], "equalTailed")
            : new(ExposureSetKind.Bounded, [new(low, high)], "equalTailed");
    }

    /// <summary>The value below which the quantity lies with probability <paramref name="p"/>; infinite when that much lies below everything, or not enough below anything.</summary>
    internal double Quantile(double p)
    {
        if (p <= BelowEverything)
            return double.NegativeInfinity;
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var part in _parts)
        {
            if (double.IsInfinity(part.Shift))
                continue;
            low = Math.Min(low, part.HalfPoint.Low + part.Shift);
            high = Math.Max(high, part.HalfPoint.High + part.Shift);
        }

        return low > high || Cdf(high) < p ? double.PositiveInfinity : Root.Of(t => Cdf(t) - p, low, high, 1e-12);
    }
}
