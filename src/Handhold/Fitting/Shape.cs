namespace Handhold.Fitting;

/// <summary>A curve but for its half point.</summary>
/// <param name="Steepness">Logits per stop.</param>
/// <param name="Ceiling">Ceiling.</param>
/// <param name="Floor">Floor.</param>
internal readonly record struct Shape(double Steepness, double Ceiling, double Floor);
