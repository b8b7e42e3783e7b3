using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>Nodes for integrals of exp(h(z)) over all z: those of <see cref="GaussRule"/>, with log(weight) + z²/2.</summary>
internal sealed class HermiteNodes
{
    /// <summary>The most that are used.</summary>
    internal const int Most = 200;

    private HermiteNodes(GaussRule rule) =>
        (At, LogWeight) = (rule.Nodes, [.. rule.Nodes.Zip(rule.Weights, (z, w) => Math.Log(w) + 0.5 * z * z)]);

    internal int Count => At.Length;

    internal ImmutableArray<double> At { get; }

    internal ImmutableArray<double> LogWeight { get; }

    internal static HermiteNodes Of(int count) => new(GaussRule.Hermite(count));
}
