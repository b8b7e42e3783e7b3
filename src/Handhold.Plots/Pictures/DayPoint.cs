namespace Handhold.Plots;

/// <summary>One day.</summary>
/// <param name="Name">Its label.</param>
/// <param name="Stops">Its luck.</param>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
internal sealed record DayPoint(string Name, double Stops, double Lower, double Upper);
