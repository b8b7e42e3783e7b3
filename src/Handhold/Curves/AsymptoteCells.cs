using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>What an estimated ceiling, or floor, may be between the nodes of its grid; empty when it is fixed.</summary>
internal sealed class AsymptoteCells
{
    private const double Far = 12;
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

            var below = (rate - low) / (high - low);
            yield return (share * below, (low + rate) / 2);
            yield return (share * (1 - below), (rate + high) / 2);
        }
    }
}
