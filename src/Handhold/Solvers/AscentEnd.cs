namespace Handhold.Solvers;

/// <summary>How a climb ended.</summary>
internal enum AscentEnd
{
    /// <summary>At a maximum with finite standard errors.</summary>
    Converged,

    /// <summary>On a plateau: the objective gains nothing any more, but some direction has no curvature.</summary>
    Flat,

    /// <summary>The steps ran out, or no step gains.</summary>
    Stalled,
}
