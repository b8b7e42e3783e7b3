using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>Everything a keeper-curve plot shows, in numbers and words; exposures are log2 seconds, rates 0 to 1.</summary>
internal sealed partial record CurveScene
{
    /// <summary>The finding.</summary>
    public required string Title { get; init; }

    /// <summary>Whose curve it is; empty when all frames made one curve.</summary>
    public string Subject { get; init; } = "";

    /// <summary>Where the numbers come from, a paragraph each.</summary>
    public ImmutableArray<string> Captions { get; init; } = [];

    /// <summary>Counts at each speed tested, fastest first; at least one.</summary>
    public required ImmutableArray<ObservedRate> Observed { get; init; }

    /// <summary>The curve's exposures, rising.</summary>
    public required ImmutableArray<double> Log2Seconds { get; init; }

    /// <summary>Median rate at each of <see cref="Log2Seconds"/>.</summary>
    public required ImmutableArray<double> Median { get; init; }

    /// <summary>What the line is: a median, or an estimate.</summary>
    public string LineName { get; init; } = "median";

    /// <summary>Lower end of the band at each of <see cref="Log2Seconds"/>.</summary>
    public required ImmutableArray<double> Lower { get; init; }

    /// <summary>Upper end of the band at each of <see cref="Log2Seconds"/>.</summary>
    public required ImmutableArray<double> Upper { get; init; }

    /// <summary>Probability inside the band and the target's interval.</summary>
    public double Level { get; init; } = 0.95;

    /// <summary>The rate that was asked for, and the exposures that have it.</summary>
    public required TargetExposure Target { get; init; }

    /// <summary>The estimated ceiling, where it is to be drawn.</summary>
    public double? Ceiling { get; init; }

    /// <summary>The camera's marks.</summary>
    public Marks Marks { get; init; } = Marks.Third;

    /// <summary>The colours.</summary>
    public Palette Palette { get; init; } = Palette.Light;

    /// <summary>Fastest speed tested.</summary>
    public double Fastest => Observed[0].Log2Seconds;

    /// <summary>Slowest speed tested.</summary>
    public double Slowest => Observed[^1].Log2Seconds;
}
