using System.Collections.Immutable;

namespace Handhold;

/// <summary>How the levels of a column differ.</summary>
public sealed class GroupSpread
{
    internal GroupSpread(
        Varying varying,
        ImmutableArray<Coefficient> spreads,
        double? correlation,
        double? inStops,
        ImmutableArray<GroupLevel> levels
    ) => (Varying, Spreads, Correlation, InStops, Levels) = (varying, spreads, correlation, inStops, levels);

    /// <summary>What was asked to vary.</summary>
    public Varying Varying { get; }

    /// <summary>Standard deviations between levels of <c>intercept</c>, <c>log2Exposure</c> and columns of terms, those that vary, on the scale of the link. Zero, without a standard error, where levels are no more unlike than chance makes them; the interval says how much is not excluded.</summary>
    public ImmutableArray<Coefficient> Spreads { get; }

    /// <summary>Correlation of a level's two effects; null where only one varies, they vary each by itself, or one is none.</summary>
    public double? Correlation { get; }

    /// <summary>Standard deviation of half-keeper exposures between levels, in stops: their spread at the typical one over its slope. Of a term that varies, that of what it buys or costs. Null where the line has no slope, where it depends on the rate, and for a term of several columns.</summary>
    public double? InStops { get; }

    /// <summary>The levels, in byte order.</summary>
    public ImmutableArray<GroupLevel> Levels { get; }
}
