using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>What one burst showed, and how many bursts of its session showed the same.</summary>
/// <param name="Key">Text that equal patterns share.</param>
/// <param name="Cells">Index of the exposure, frames and keepers, exposures rising.</param>
/// <param name="Bursts">How many bursts.</param>
internal sealed record BurstPattern(string Key, ImmutableArray<(int Exposure, int Frames, int Keepers)> Cells, int Bursts);
