namespace Handhold.Solvers;

/// <summary>Where <see cref="NewtonLogistic"/> ended.</summary>
/// <param name="Intercept">Log odds at x = 0.</param>
/// <param name="Slope">Change of the log odds for one unit of x.</param>
/// <param name="LogLikelihood">Bernoulli scale: no binomial coefficients.</param>
/// <param name="Steps">Steps taken or allowed.</param>
/// <param name="Converged">Whether the maximum was reached; where keepers and rejects separate there is none.</param>
internal readonly record struct LogisticFit(double Intercept, double Slope, double LogLikelihood, int Steps, bool Converged);
