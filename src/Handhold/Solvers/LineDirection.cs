namespace Handhold.Solvers;

/// <summary>Where a logistic line's objective rises, and Newton's step; level and slope at the weighted mean of x.</summary>
/// <param name="Weight">Expected information of the level.</param>
/// <param name="Spread">Expected information of the slope.</param>
/// <param name="Shift">The weighted mean, from the point's centre.</param>
/// <param name="LevelScore">Derivative by the level.</param>
/// <param name="SlopeScore">Derivative by the slope.</param>
/// <param name="Level">Step of the level.</param>
/// <param name="Slope">Step of the slope.</param>
/// <param name="IsMaximum">Whether the objective curves down in every direction.</param>
internal readonly record struct LineDirection(
    double Weight,
    double Spread,
    double Shift,
    double LevelScore,
    double SlopeScore,
    double Level,
    double Slope,
    bool IsMaximum
)
{
    /// <summary>The objective's slope along the step.</summary>
    internal double Gain => LevelScore * Level + SlopeScore * Slope;

    /// <summary>Length of the step in standard errors.</summary>
    internal double Decrement => Math.Sqrt(Gain);

    /// <summary>The objective's slope here along the step that led here.</summary>
    internal double Along(in LineDirection step) => LevelScore * (step.Level + Shift * step.Slope) + SlopeScore * step.Slope;

    /// <summary>Standard errors between two points.</summary>
    internal double Distance(in LinePoint a, in LinePoint b)
    {
        var (level, slope) = (a.Level - b.Predictor(a.Centre), a.Slope - b.Slope);
        return Math.Sqrt(Weight * level * level + Spread * slope * slope);
    }
}
