namespace Handhold;

/// <summary>What a level adds to one coefficient: its most likely value given the frames of all levels.</summary>
public sealed class GroupEffect
{
    internal GroupEffect(string name, double mode, double standardDeviation) =>
        (Name, Mode, StandardDeviation) = (name, mode, standardDeviation);

    /// <summary>The coefficient: <c>intercept</c> or <c>log2Exposure</c>.</summary>
    public string Name { get; }

    /// <summary>The most likely value, on the scale of the link; drawn towards zero the more, the fewer frames the level has.</summary>
    public double Mode { get; }

    /// <summary>Its standard deviation, given coefficients and spreads.</summary>
    public double StandardDeviation { get; }
}
