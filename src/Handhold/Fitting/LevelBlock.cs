using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>Levels that depend on each other: those of the finest grouping, and the other levels and days that they share.</summary>
/// <param name="Upper">Places among <see cref="VaryingFrames.Upper"/>.</param>
/// <param name="Finest">Levels of the finest grouping.</param>
internal sealed record LevelBlock(ImmutableArray<int> Upper, ImmutableArray<int> Finest);
