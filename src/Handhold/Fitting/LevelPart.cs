using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>Frames of one level of the finest grouping that have all other levels and the day in common.</summary>
/// <param name="Above">Those levels and the day, places among <see cref="VaryingFrames.Upper"/>.</param>
/// <param name="Weights">How much of a unit of each enters the rotation, and how much the half point, whatever moved.</param>
/// <param name="Motion">Their setting's motions, where one of those enters the rotation among others; null where none does.</param>
/// <param name="Bursts">Its bursts.</param>
/// <param name="Afresh">Its frames held afresh.</param>
internal sealed record LevelPart(
    ImmutableArray<int> Above,
    ImmutableArray<(double Turning, double Shifting)> Weights,
    Setting? Motion,
    ImmutableArray<TermBurst> Bursts,
    ImmutableArray<TermCell> Afresh
);
