namespace Handhold.Fitting;

/// <summary>Nodes for the integrals over levels.</summary>
/// <param name="Finest">For the numbers of a finest level.</param>
/// <param name="Above">For what stands above it, about the top of Laplace's method; null for that method alone.</param>
internal sealed record IntegralRule(LevelNodes Finest, UpperNodes? Above)
{
    /// <summary>Good enough to find one's way.</summary>
    internal static IntegralRule Few { get; } = new(LevelNodes.Of(one: 7, two: 3), null);

    internal static IntegralRule Usual { get; } = new(LevelNodes.Of(9), new(one: 5, two: 3, more: null, pairs: 0));

    internal static IntegralRule More { get; } = new(LevelNodes.Of(15), new(one: 9, two: 5, more: 3, pairs: 32));
}
