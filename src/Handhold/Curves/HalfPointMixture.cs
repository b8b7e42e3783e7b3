using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>The distribution of a quantity that is, within each part, the half point plus a constant.</summary>
internal sealed class HalfPointMixture(ImmutableArray<MixturePart> parts)
{
    /// <summary>The half point itself.</summary>
    internal HalfPointMixture(ImmutableArray<CurveAtom> atoms)
        : this([.. atoms.Select(a => new MixturePart(a.Weight, a.HalfPoint, 0))]) { }

    /// <summary>Probability that the quantity lies below everything.</summary>
    internal double BelowEverything { get; } = parts.Sum(p => double.IsNegativeInfinity(p.Shift) ? p.Weight : 0);

    /// <summary>P(quantity at most <paramref name="t"/>).</summary>
    internal double Cdf(double t)
    {
        var sum = 0.0;
        foreach (var part in parts)
            sum += part.Weight * part.Cdf(t);
        return Math.Min(sum, 1);
    }

    /// <summary>The value below which the quantity lies with probability <paramref name="p"/>; infinite when that much lies below everything, or not enough below anything.</summary>
    internal double Quantile(double p)
    {
        if (p <= BelowEverything)
            return double.NegativeInfinity;
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var part in parts)
        {
            if (double.IsInfinity(part.Shift))
                continue;
            low = Math.Min(low, part.HalfPoint.Start + part.Shift);
            high = Math.Max(high, part.HalfPoint.Position(part.HalfPoint.Density.Length - 1) + part.Shift);
        }

        if (low > high)
            return double.PositiveInfinity;
        var (below, above) = (Cdf(low) - p, Cdf(high) - p);
        if (above < 0)
            return double.PositiveInfinity;
        for (var i = 0; i < 200 && high - low > 1e-12 * (1 + Math.Abs(low) + Math.Abs(high)); i++)
        {
            // Regula falsi, and bisection every third time, since regula falsi may creep up on one side.
            var at = i % 3 == 2 || above <= below ? (low + high) / 2 : low - below * (high - low) / (above - below);
            var value = Cdf(at) - p;
            if (value == 0)
                return at;
            if (value < 0)
                (low, below) = (at, value);
            else
                (high, above) = (at, value);
        }

        return (low + high) / 2;
    }
}
