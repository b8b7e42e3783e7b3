namespace Handhold.Fitting;

/// <summary>Where the coordinates of <see cref="TermDensity"/> stand for the parameters.</summary>
/// <param name="Tau0">Habitual half point where every term is neutral, log2 seconds.</param>
/// <param name="LogSteepness">Natural logarithm of the steepness.</param>
/// <param name="Ceiling">Ceiling.</param>
/// <param name="Floor">Floor.</param>
/// <param name="SessionSd">Sd of a session's luck, stops.</param>
/// <param name="BurstSd">Sd of a burst's luck, stops.</param>
internal readonly record struct TermPoint(double Tau0, double LogSteepness, double Ceiling, double Floor, double SessionSd, double BurstSd);
