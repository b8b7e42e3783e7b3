namespace Handhold.Curves;

/// <summary>One draw of a level's effects beside a point of the parameters.</summary>
/// <param name="Ratio">What the point's weight is multiplied by for what its block has in common.</param>
/// <param name="Own">And for the level itself.</param>
/// <param name="Shift">Shift of the half point, stops.</param>
/// <param name="Steepening">Growth of the natural logarithm of the steepness.</param>
/// <param name="Open">Share of the variance between levels that the level's frames leave open at this point.</param>
internal readonly record struct LevelDraw(double Ratio, double Own, double Shift, double Steepening, double Open);
