using System.Collections.Immutable;

namespace Handhold;

/// <summary>What is fitted to a table of judged frames.</summary>
/// <remarks>P(keeper) = floor + (ceiling - floor) / (1 + exp(-b (tau - x))), x = log2(exposure / 1 s).</remarks>
public sealed record KeeperModel
{
    /// <summary>The model as most people want it.</summary>
    public static KeeperModel Default { get; } = new();

    /// <summary>What is believed before the data.</summary>
    public Priors Priors { get; init; } = Priors.Default;

    /// <summary>The ceiling; estimated unless said otherwise.</summary>
    public Ceiling Ceiling { get; init; } = Ceiling.Estimated;

    /// <summary>The floor; zero unless said otherwise.</summary>
    public Floor Floor { get; init; } = Floor.Zero;

    /// <summary>How frames share luck.</summary>
    public LuckKind Luck { get; init; } = LuckKind.Normal;

    /// <summary>Which frames share a burst.</summary>
    public BurstUse Bursts { get; init; } = BurstUse.Recorded;

    /// <summary>Probability inside reported intervals.</summary>
    public double Level { get; init; } = 0.95;

    /// <summary>Columns whose combinations get a curve each; the default list is photographer, setup and criterion, those present.</summary>
    public ImmutableArray<string> Each { get; init; } = ["photographer", "setup", "criterion"];
}
