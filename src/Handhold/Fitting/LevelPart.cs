using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>Frames of one level of the finest grouping that have all other levels and the day in common.</summary>
/// <param name="Above">Those levels and the day, places among <see cref="VaryingFrames.Upper"/>.</param>
/// <param name="Bursts">Its bursts.</param>
/// <param name="Afresh">Its frames held afresh.</param>
internal sealed record LevelPart(ImmutableArray<int> Above, ImmutableArray<TermBurst> Bursts, ImmutableArray<TermCell> Afresh);
