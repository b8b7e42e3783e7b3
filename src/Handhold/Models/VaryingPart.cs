namespace Handhold;

/// <summary>What varies from level to level.</summary>
public enum VaryingPart
{
    /// <summary>The height of the line: levels are better or worse at every speed alike.</summary>
    Intercept,

    /// <summary>The slope on log2 exposure.</summary>
    Exposure,

    /// <summary>Height and slope, correlated.</summary>
    Both,

    /// <summary>Height at one second and slope, each by itself.</summary>
    BothUncorrelated,
}
