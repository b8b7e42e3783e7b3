using System.Collections.Immutable;

namespace Handhold;

/// <summary>How the levels of a column differ, as a posterior sees it.</summary>
public sealed class VaryingLevels
{
    private readonly Lazy<ImmutableArray<VaryingLevel>> _levels;

    internal VaryingLevels(
        Varying varying,
        ImmutableArray<ParameterSummary> spreads,
        ParameterSummary? correlation,
        Lazy<ImmutableArray<VaryingLevel>> levels
    ) => (Varying, Spreads, Correlation, _levels) = (varying, spreads, correlation, levels);

    /// <summary>What was asked to vary.</summary>
    public Varying Varying { get; }

    /// <summary>Standard deviations between levels, those that vary: of <c>tau0</c> in stops, of <c>log2b</c>, of effects of terms.</summary>
    public ImmutableArray<ParameterSummary> Spreads { get; }

    /// <summary>Correlation of a level's two effects; null where only one varies, or each by itself.</summary>
    public ParameterSummary? Correlation { get; }

    /// <summary>The levels, in byte order. Computed when first asked.</summary>
    public ImmutableArray<VaryingLevel> Levels => _levels.Value;
}
