namespace Handhold;

/// <summary>The keeper rate that even very fast frames do not exceed.</summary>
public sealed record Ceiling
{
    private Ceiling(double? value) => Value = value;

    /// <summary>No frame is lost but to blur that grows with exposure.</summary>
    public static Ceiling One { get; } = new(1.0);

    /// <summary>Estimated under its prior, shared over the curves of one fit.</summary>
    public static Ceiling Estimated { get; } = new(value: null);

    /// <summary>The fixed value; null when estimated.</summary>
    public double? Value { get; }

    /// <summary>A known ceiling, above 0 and at most 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not above 0 and at most 1.</exception>
    public static Ceiling Fixed(double value) =>
        value is > 0 and <= 1
            ? new(value)
            : throw new ArgumentOutOfRangeException(
                nameof(value),
                FormattableString.Invariant($"A ceiling of {value} cannot be: it is above 0 and at most 1.")
            );
}
