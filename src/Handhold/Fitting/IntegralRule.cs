namespace Handhold.Fitting;

/// <summary>Nodes for the integrals over levels.</summary>
/// <param name="Finest">For the numbers of a finest level.</param>
/// <param name="Above">For those of one level above it, about the top of Laplace's method; null for that method alone.</param>
internal sealed record IntegralRule(LevelNodes Finest, LevelNodes? Above)
{
    /// <summary>Good enough to find one's way.</summary>
    internal static IntegralRule Few { get; } = new(LevelNodes.Of(one: 7, two: 3), null);

    internal static IntegralRule Usual { get; } = new(LevelNodes.Of(9), LevelNodes.Of(one: 5, two: 3));

    internal static IntegralRule More { get; } = new(LevelNodes.Of(15), LevelNodes.Of(one: 9, two: 5));
}
