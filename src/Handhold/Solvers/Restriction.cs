using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Holds a linear contrast of the coefficients: contrast · b = value.</summary>
public sealed record Restriction
{
    /// <summary>Holds <paramref name="contrast"/> · b at <paramref name="value"/>.</summary>
    /// <param name="contrast">One weight a column, not all zero.</param>
    /// <param name="value">A finite number.</param>
    /// <exception cref="ArgumentException">No weight differs from zero, or a number is not finite.</exception>
    public Restriction(ImmutableArray<double> contrast, double value)
    {
        if (contrast.All(weight => weight == 0) || !contrast.All(double.IsFinite) || !double.IsFinite(value))
            throw new ArgumentException("A contrast needs finite weights, one of them not zero, and a finite value.", nameof(contrast));
        (Contrast, Value) = (contrast, value);
    }

    /// <summary>Weights, one a column.</summary>
    public ImmutableArray<double> Contrast { get; }

    /// <summary>What the contrast is held at.</summary>
    public double Value { get; }
}
