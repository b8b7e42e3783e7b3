namespace Handhold.Solvers;

/// <summary>The logarithm of a density, up to a constant, at a point; minus infinity where it is zero. Called from several threads at once.</summary>
internal delegate double LogDensity(ReadOnlySpan<double> point);
