namespace Handhold.Plots;

/// <summary>The residual of one cell.</summary>
/// <param name="Log2Seconds">Its exposure.</param>
/// <param name="Residual">Normal deviate.</param>
/// <param name="Counts">Keepers of frames, in words.</param>
/// <param name="IsReliable">Whether it may be trusted.</param>
internal sealed record ResidualPoint(double Log2Seconds, double Residual, string Counts, bool IsReliable);
