namespace Handhold.Fitting;

/// <summary>Laplace's method for one block: where its upper levels' numbers are most likely, their spread there, and the integral.</summary>
/// <param name="Z">Numbers of the upper levels and days.</param>
/// <param name="Factor">Lower triangle L of the curvature L Lᵀ, row-major.</param>
/// <param name="Levels">Tops of the finest levels there.</param>
/// <param name="Log">Log of the integral.</param>
internal sealed record BlockTop(double[] Z, double[] Factor, LevelTop[] Levels, double Log);
