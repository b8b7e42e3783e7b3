namespace Handhold;

/// <summary>What is believed before the data. Used as given, never rescaled.</summary>
public sealed record Priors
{
    /// <summary>The frozen set of this version.</summary>
    public static Priors Default { get; } = new();

    /// <summary>Name of the frozen set from which these priors started.</summary>
    public string Version { get; init; } = "priors-1";

    /// <summary>Half point of the uncapped curve, log2 seconds; null: anchored at the curve's own focal length, stabiliser, magnification and criterion.</summary>
    public NormalPrior? HalfPoint { get; init; }

    /// <summary>What the anchored half point is made of.</summary>
    public AnchorPriors Anchor { get; init; } = new();

    /// <summary>Steepness at half, logits per stop.</summary>
    public LogNormalPrior Steepness { get; init; } = new(1.6, 0.35);

    /// <summary>One minus the ceiling, when the ceiling is estimated.</summary>
    public BetaPrior CeilingLoss { get; init; } = new(1.2, 38.8);

    /// <summary>The floor, when it is estimated.</summary>
    public BetaPrior Floor { get; init; } = new(1, 49);

    /// <summary>Standard deviation of a session's luck, stops.</summary>
    public HalfNormalPrior SessionLuck { get; init; } = new(0.35);

    /// <summary>Standard deviation of a burst's luck, stops.</summary>
    public HalfNormalPrior BurstLuck { get; init; } = new(0.25);

    /// <summary>Shift of the half point, stops, for the first frame of a burst.</summary>
    public NormalPrior FirstFrame { get; init; } = new(-0.2, 0.4);

    /// <summary>Shift of the half point, stops, from the lowest to the highest value of a numeric column.</summary>
    public NormalPrior ColumnOverRange { get; init; } = new(0, 1.5);

    /// <summary>Shift of the half point, stops, for a level of a column of labels; the levels' shifts sum to zero.</summary>
    public NormalPrior ColumnLevel { get; init; } = new(0, 1);

    /// <summary>Growth of the natural logarithm of the steepness from the lowest to the highest value of a column multiplied with the exposure.</summary>
    public NormalPrior SteepnessOverRange { get; init; } = new(0, 0.3);

    /// <summary>How levels that vary spread.</summary>
    public SpreadPriors Spreads { get; init; } = new();
}
