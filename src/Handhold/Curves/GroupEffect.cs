namespace Handhold;

/// <summary>What a level adds to one coefficient: its most likely value given the frames of all levels.</summary>
public sealed class GroupEffect
{
    private readonly Lazy<TermInStops?> _inStops;

    internal GroupEffect(string name, double mode, double standardDeviation, Lazy<TermInStops?> inStops) =>
        (Name, Mode, StandardDeviation, _inStops) = (name, mode, standardDeviation, inStops);

    /// <summary>The coefficient: <c>intercept</c>, <c>log2Exposure</c>, or the column of a term.</summary>
    public string Name { get; }

    /// <summary>The most likely value, on the scale of the link; drawn towards zero the more, the fewer frames the level has.</summary>
    public double Mode { get; }

    /// <summary>Its standard deviation, given coefficients and spreads.</summary>
    public double StandardDeviation { get; }

    /// <summary>What a term that varies costs or buys at this level, in stops; null for height and slope, and where it depends on the rate. Computed when asked.</summary>
    public TermInStops? InStops => _inStops.Value;
}
