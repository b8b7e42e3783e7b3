using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>How one term reads conditions as weights of its effects.</summary>
/// <param name="Kind">Where it enters.</param>
/// <param name="Weights">Effects and their weights under given conditions; throws when the conditions lack the term.</param>
internal sealed record WhatMovedPart(PartKind Kind, Func<Conditions, ImmutableArray<(int Effect, double Weight)>> Weights);
