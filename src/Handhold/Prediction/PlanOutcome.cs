namespace Handhold;

/// <summary>What became of a plan on one day.</summary>
public enum PlanOutcome
{
    /// <summary>The wanted keepers came home, whatever the frames not shot or not judged would have been.</summary>
    Kept,

    /// <summary>Fewer keepers came home, whatever the frames not shot or not judged would have been.</summary>
    Broken,

    /// <summary>It depends on frames that were not shot or not judged, or on which of too many are counted.</summary>
    Undecided,

    /// <summary>The frames were shot in other bursts than planned, so nothing was promised of them.</summary>
    OtherBursts,
}
