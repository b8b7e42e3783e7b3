using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>One weighted point of the posterior of a curve in which levels vary.</summary>
/// <param name="Typical">The curve of a typical level.</param>
/// <param name="Loadings">How the levels of each grouping spread; last the days.</param>
internal sealed record VaryingDraw(TermDraw Typical, ImmutableArray<LevelLoading> Loadings);
