namespace Handhold;

/// <summary>What was decided about a frame.</summary>
public enum Verdict
{
    /// <summary>Nobody looked yet: the frame is counted and reported, never used.</summary>
    NotJudged,

    /// <summary>Sharp by the criterion.</summary>
    Keeper,

    /// <summary>Not sharp by the criterion.</summary>
    Reject,
}
