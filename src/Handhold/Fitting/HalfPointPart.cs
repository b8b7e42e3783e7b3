using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>One part of a shape's posterior: which half point it speaks of, its burst luck, its share and its density.</summary>
internal sealed record HalfPointPart(HalfPointKind Kind, int BurstNode, double Share, HalfPointDensity Density);
