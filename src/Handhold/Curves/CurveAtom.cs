namespace Handhold.Curves;

/// <summary>A part of a posterior in which all but the half point is fixed.</summary>
/// <param name="Weight">Posterior probability of the part.</param>
/// <param name="Steepness">Logits per stop.</param>
/// <param name="Ceiling">Ceiling.</param>
/// <param name="Floor">Floor.</param>
/// <param name="BurstSd">Standard deviation of a burst's luck, stops.</param>
/// <param name="HalfPoint">Distribution of the half point within the part.</param>
/// <param name="FirstShift">What the first frame of a burst adds to the half point, stops.</param>
internal sealed record CurveAtom(
    double Weight,
    double Steepness,
    double Ceiling,
    double Floor,
    double BurstSd,
    HalfPoint HalfPoint,
    double FirstShift = 0
);
