namespace Handhold.Diagnostics;

/// <summary>What was observed at one speed against what was fitted, and against what the other speeds lead to expect.</summary>
public sealed class SpeedCheck
{
    internal SpeedCheck(SpeedCount seen, ConfidenceInterval observed, double? fitted, double? expected, double? chance) =>
        (Seen, Observed, Fitted, Expected, Chance) = (seen, observed, fitted, expected, chance);

    /// <summary>The speed, its frames and keepers.</summary>
    public SpeedCount Seen { get; }

    /// <summary>Exact (Clopper-Pearson) interval of the observed rate, 0 to 1, were frames independent.</summary>
    public ConfidenceInterval Observed { get; }

    /// <summary>Fitted rate of the frames shot there, 0 to 1: of a posterior the mean, on the days tested; null where nothing was fitted there.</summary>
    public double? Fitted { get; }

    /// <summary>Rate that the other speeds lead to expect, 0 to 1; null where they leave nothing finite.</summary>
    public double? Expected { get; }

    /// <summary>Observed less expected rate, in points of per cent; null with <see cref="Expected"/>.</summary>
    public double? GapInPoints => Expected is { } expected ? 100 * ((double)Seen.Keepers / Seen.Frames - expected) : null;

    /// <summary>Chance of a count as far out as this one, to either side, from 0 to 1; null with <see cref="Expected"/>. Of several speeds the smallest is small by chance: times their number it is a bound.</summary>
    public double? Chance { get; }
}
