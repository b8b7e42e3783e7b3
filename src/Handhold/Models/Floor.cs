namespace Handhold;

/// <summary>The keeper rate that even very slow frames keep, by luck or misjudging.</summary>
public sealed record Floor
{
    private Floor(double? value) => Value = value;

    /// <summary>Slow enough frames are never keepers.</summary>
    public static Floor Zero { get; } = new(0.0);

    /// <summary>Estimated under its prior, shared over the curves of one fit.</summary>
    public static Floor Estimated { get; } = new(value: null);

    /// <summary>The fixed value; null when estimated.</summary>
    public double? Value { get; }

    /// <summary>A known floor, from 0 to below 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not from 0 to below 1.</exception>
    public static Floor Fixed(double value) =>
        value is >= 0 and < 1
            ? new(value)
            : throw new ArgumentOutOfRangeException(
                nameof(value),
                FormattableString.Invariant($"A floor of {value} cannot be: it is from 0 to below 1.")
            );
}
