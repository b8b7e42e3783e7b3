using System.Collections.Immutable;

namespace Handhold;

/// <summary>How the levels of a column differ, as a posterior sees it.</summary>
public sealed class VaryingLevels
{
    internal VaryingLevels(
        Varying varying,
        ImmutableArray<ParameterSummary> spreads,
        ParameterSummary? correlation,
        ImmutableArray<VaryingLevel> levels
    ) => (Varying, Spreads, Correlation, Levels) = (varying, spreads, correlation, levels);

    /// <summary>What was asked to vary.</summary>
    public Varying Varying { get; }

    /// <summary>Standard deviations between levels, those that vary: of <c>tau0</c> in stops, of <c>log2b</c>, of effects of terms.</summary>
    public ImmutableArray<ParameterSummary> Spreads { get; }

    /// <summary>Correlation of a level's two effects; null where only one varies, or each by itself.</summary>
    public ParameterSummary? Correlation { get; }

    /// <summary>The levels, in byte order.</summary>
    public ImmutableArray<VaryingLevel> Levels { get; }
}
