namespace Handhold;

/// <summary>Stable codes of situations. In files their names start with a small letter.</summary>
public enum StatusCode
{
    /// <summary>Every keeper is faster than every reject.</summary>
    Separated,

    /// <summary>Keepers and rejects meet at one exposure only.</summary>
    QuasiSeparated,

    /// <summary>Whether keepers and rejects separate could not be decided.</summary>
    SeparationUnknown,

    /// <summary>Every frame was a keeper.</summary>
    AllKeepers,

    /// <summary>No frame was a keeper.</summary>
    NoKeepers,

    /// <summary>All frames have one exposure, so the data say nothing on steepness.</summary>
    SingleExposure,

    /// <summary>Keepers become more frequent with longer exposure.</summary>
    WrongDirection,

    /// <summary>A term changes the steepness, so that what it costs in stops depends on the rate.</summary>
    SlopeVaries,

    /// <summary>The data do not exclude that the exposure makes no difference.</summary>
    FlatNotExcluded,

    /// <summary>The data do not tell the ceiling.</summary>
    CeilingNotIdentified,

    /// <summary>A parameter is hardly better known than before the data.</summary>
    PriorDominated,

    /// <summary>The answer changes by more than a factor of two when the priors of steepness and luck are widened or narrowed twofold.</summary>
    RestsOnPrior,

    /// <summary>The question lies beyond the speeds tested.</summary>
    OutsideTestedRange,

    /// <summary>No exposure gives the rate, or no number of frames the assurance.</summary>
    NotReachable,

    /// <summary>More frames would be needed than the budget allows.</summary>
    OverBudget,

    /// <summary>No two frames share a recorded burst, or they say nothing on luck: it rests on the prior, or is taken as none.</summary>
    BurstsNotAssessable,

    /// <summary>The observed rates do not follow a falling curve.</summary>
    CurveDoesNotFit,

    /// <summary>The two sides were shot on different days, so the days' luck is part of the difference.</summary>
    ConfoundedWithSession,

    /// <summary>Within a session the speeds were shot in order, so that practice or fatigue looks like an effect of exposure.</summary>
    OrderConfounded,

    /// <summary>The numerical result did not settle, or stands for something simpler than what is meant.</summary>
    Approximate,

    /// <summary>Frames of a burst, or of a level that varies, are no more alike than others: the estimate of what they share is none.</summary>
    NoGroupSpread,

    /// <summary>Every burst kept or lost all of its frames: no luck is too large for them.</summary>
    BurstsAllAlike,

    /// <summary>The decision changes when the frames not judged are called rejects.</summary>
    RestsOnMissing,

    /// <summary>How levels vary cannot be told, since keepers and rejects separate: all frames are taken as of one curve.</summary>
    GroupsNotAssessable,

    /// <summary>Labels of a column that varies occur under several labels of another, and stand for the same level everywhere.</summary>
    LabelsRepeat,

    /// <summary>Frames were probably deleted before anyone judged them, so that keepers are too frequent among those left.</summary>
    FramesDeleted,
}
