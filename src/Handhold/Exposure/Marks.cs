namespace Handhold;

/// <summary>Which series of marked shutter speeds a camera offers.</summary>
public enum Marks
{
    /// <summary>One mark a stop: 1/60, 1/30, 1/15.</summary>
    Full,

    /// <summary>Two marks a stop: 1/60, 1/45, 1/30.</summary>
    Half,

    /// <summary>Three marks a stop: 1/60, 1/50, 1/40, 1/30.</summary>
    Third,
}
