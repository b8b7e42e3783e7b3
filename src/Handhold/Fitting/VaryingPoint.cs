using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>Where the coordinates of <see cref="VaryingDensity"/> stand for the parameters.</summary>
/// <param name="Typical">The curve of a typical level.</param>
/// <param name="Effects">The terms' effects.</param>
/// <param name="Loadings">What the numbers of each grouping's levels do; last those of days.</param>
internal sealed record VaryingPoint(TermPoint Typical, double[] Effects, ImmutableArray<LevelLoading> Loadings);
