using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>One weighted point of the posterior of a curve with terms.</summary>
/// <param name="Weight">Its probability.</param>
/// <param name="Tau0">Habitual half point where every term is neutral, log2 seconds.</param>
/// <param name="LogSteepness">Natural logarithm of the steepness where every term is neutral.</param>
/// <param name="Ceiling">Ceiling.</param>
/// <param name="Floor">Floor.</param>
/// <param name="SessionSd">Sd of a session's luck, stops.</param>
/// <param name="BurstSd">Sd of a burst's luck, stops.</param>
/// <param name="Days">Luck of each tested session, stops.</param>
/// <param name="Effects">The effects.</param>
/// <param name="Shift">What the half point is shifted by for whose curve it is, stops.</param>
/// <param name="ShiftSd">Standard deviation of a normal shift beside it that is not known yet, stops.</param>
internal sealed record TermDraw(
    double Weight,
    double Tau0,
    double LogSteepness,
    double Ceiling,
    double Floor,
    double SessionSd,
    double BurstSd,
    ImmutableArray<double> Days,
    ImmutableArray<double> Effects,
    double Shift = 0,
    double ShiftSd = 0
);
