namespace Handhold.Curves;

/// <summary>A stretch of ceilings, or of floors, for which the atoms of one node speak.</summary>
/// <param name="Share">Part that the node has in the stretch, relative to the node's probability; may be negative, as interpolation weights are.</param>
/// <param name="Low">Lowest value.</param>
/// <param name="Middle">Value in the middle.</param>
/// <param name="High">Highest value.</param>
internal readonly record struct AsymptoteCell(double Share, double Low, double Middle, double High);
