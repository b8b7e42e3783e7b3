namespace Handhold.Solvers;

/// <summary>Whether some linear predictor parts keepers from rejects.</summary>
public enum SeparationKind
{
    /// <summary>Keepers and rejects overlap in every direction: the likelihood has a finite maximum.</summary>
    None,

    /// <summary>Some predictor is above zero on every keeper and below zero on every reject.</summary>
    Complete,

    /// <summary>Some predictor is never below zero on keepers and never above on rejects, and zero only on some.</summary>
    Quasi,

    /// <summary>Every frame is a keeper.</summary>
    AllKeepers,

    /// <summary>No frame is a keeper.</summary>
    NoKeepers,

    /// <summary>The linear program did not finish, or its answer did not pass its check.</summary>
    Unknown,
}
