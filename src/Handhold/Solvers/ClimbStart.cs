namespace Handhold.Solvers;

/// <summary>A point to climb from.</summary>
/// <param name="Theta">Coefficients of the orthonormal columns; those beyond them are not read.</param>
/// <param name="Ceiling">The ceiling.</param>
/// <param name="Floor">The floor.</param>
/// <param name="Free">Which of them the climb may move.</param>
internal readonly record struct ClimbStart(double[] Theta, double Ceiling, double Floor, (bool Ceiling, bool Floor) Free);
