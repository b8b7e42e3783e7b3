namespace Handhold.Plots;

/// <summary>What one thing buys or costs.</summary>
/// <param name="Name">What it is, and where the rest stands.</param>
/// <param name="Stops">The change, where the data say.</param>
/// <param name="Lower">Lower end; null is unbounded.</param>
/// <param name="Upper">Upper end; null is unbounded.</param>
/// <param name="Rated">The maker's rating, stops; null where there is none.</param>
internal sealed record StopsRow(string Name, double? Stops, double? Lower, double? Upper, double? Rated);
