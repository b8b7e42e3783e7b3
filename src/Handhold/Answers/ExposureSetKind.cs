namespace Handhold;

/// <summary>The shape of a set of exposures.</summary>
public enum ExposureSetKind
{
    /// <summary>Between two exposures.</summary>
    Bounded,

    /// <summary>Any exposure up to one.</summary>
    AtMost,

    /// <summary>Any exposure from one on.</summary>
    AtLeast,

    /// <summary>Every exposure: the data exclude none.</summary>
    Everything,

    /// <summary>Two pieces with a gap.</summary>
    TwoPieces,

    /// <summary>No exposure has the rate: it is above the ceiling or below the floor.</summary>
    NotReachable,
}
