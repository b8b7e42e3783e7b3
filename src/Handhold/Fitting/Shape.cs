namespace Handhold.Fitting;

/// <summary>A curve but for its half point.</summary>
/// <param name="Steepness">Logits per stop.</param>
/// <param name="Ceiling">Ceiling.</param>
/// <param name="Floor">Floor.</param>
internal readonly record struct Shape(double Steepness, double Ceiling, double Floor)
{
    /// <summary>The curve of frames called keepers.</summary>
    internal Shape Judged(Judging judging) => this with { Ceiling = judging.Called(Ceiling), Floor = judging.Called(Floor) };
}
