namespace Handhold;

/// <summary>Which frames share a burst.</summary>
public enum BurstUse
{
    /// <summary>Those with the same recorded burst (within photographer, setup and session); the others were each held afresh.</summary>
    Recorded,

    /// <summary>None: every frame was held afresh.</summary>
    None,

    /// <summary>The frames of one row.</summary>
    PerRow,
}
