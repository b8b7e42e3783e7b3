using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>A line of a card.</summary>
/// <param name="Speed">The marked speed.</param>
/// <param name="Rate">The keeper rate; null when the curve declines.</param>
/// <param name="Frames">Frames for one keeper at each of <see cref="CardFace.Assurances"/>, in words.</param>
internal sealed record CardRow(string Speed, RateEstimate? Rate, ImmutableArray<string> Frames);
