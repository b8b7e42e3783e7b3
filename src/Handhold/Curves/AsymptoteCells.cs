using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>What an estimated ceiling, or floor, may be between the nodes of its grid; empty when it is fixed.</summary>
internal sealed class AsymptoteCells
{
    private const double Far = 12;

    /// <summary>Pieces of a stretch that ends at the rate, where the exposure runs away like a logarithm: share, and middle counted from that end.</summary>
    private static readonly ImmutableArray<(double Part, double Middle)> TowardsRate = [(0.25, 0.125), (0.75, 0.625)];

    private readonly ImmutableDictionary<double, ImmutableArray<AsymptoteCell>> _byNode;

    internal AsymptoteCells(ImmutableDictionary<double, ImmutableArray<AsymptoteCell>> byNode) => _byNode = byNode;

    internal static AsymptoteCells None { get; } = new(ImmutableDictionary<double, ImmutableArray<AsymptoteCell>>.Empty);

    /// <summary>Whether the node stands for values so near a rate that it matters which.</summary>
    /// <param name="node">The ceiling or floor of an atom.</param>
    /// <param name="loss">How far the node is from one, or the floor's from zero.</param>
    /// <param name="rate">The rate.</param>
    internal bool Matter(double node, double loss, double rate) => Far * loss >= Math.Abs(node - rate) && _byNode.ContainsKey(node);

    /// <summary>The node's shares in values below and above the rate.</summary>
    internal IEnumerable<(double Share, double Value)> SplitAt(double rate, double node)
    {
        foreach (var (share, low, middle, high) in _byNode[node])
        {
            if (rate <= low || rate >= high)
            {
                yield return (share, middle);
                continue;
            }

            var (below, above) = (rate - low, high - rate);
            foreach (var (part, from) in TowardsRate)
            {
                yield return (share * part * below / (high - low), rate - from * below);
                yield return (share * part * above / (high - low), rate + from * above);
            }
        }
    }
}
