namespace Handhold.Solvers;

/// <summary>What the frames of a cluster share.</summary>
internal enum SharedLuck
{
    /// <summary>A normal shift of the predictor: <see cref="NormalShift"/>.</summary>
    NormalShift,

    /// <summary>A rate from a beta distribution: <see cref="BetaRates"/>.</summary>
    BetaRates,
}
