using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>Nodes for integrals of exp(h(z)) over the one or two numbers z of a level, in lanes of eight; what is left of the last lane weighs nothing.</summary>
internal sealed class LevelNodes
{
    private LevelNodes(IEnumerable<Node> one, IEnumerable<Node> two) => (One, Two) = (Lanes(one), Lanes(two));

    /// <summary>For one number.</summary>
    internal ImmutableArray<(Vector512<double> X0, Vector512<double> X1, Vector512<double> LogWeight)> One { get; }

    /// <summary>For two.</summary>
    internal ImmutableArray<(Vector512<double> X0, Vector512<double> X1, Vector512<double> LogWeight)> Two { get; }

    /// <summary>So many nodes of Gauss and Hermite in each dimension.</summary>
    internal static LevelNodes Of(int count) => Of(count, count);

    /// <summary>So many for one number, and so many in each dimension for two.</summary>
    internal static LevelNodes Of(int one, int two) => new(Line(HermiteNodes.Of(one)), Square(HermiteNodes.Of(two)));

    private static IEnumerable<Node> Line(HermiteNodes nodes) => nodes.At.Zip(nodes.LogWeight, (x, log) => new Node(x, 0, log));

    private static IEnumerable<Node> Square(HermiteNodes nodes) =>
        Line(nodes).SelectMany(_ => Line(nodes), (b, a) => new Node(a.X0, b.X0, a.LogWeight + b.LogWeight));

    private static ImmutableArray<(Vector512<double>, Vector512<double>, Vector512<double>)> Lanes(IEnumerable<Node> nodes) =>
        [
            .. nodes
                .Chunk(Vector512<double>.Count)
                .Select(eight =>
                    (Lane(eight, n => n.X0, 0), Lane(eight, n => n.X1, 0), Lane(eight, n => n.LogWeight, double.NegativeInfinity))
                ),
        ];

    private static Vector512<double> Lane(Node[] eight, Func<Node, double> number, double rest)
    {
        Span<double> lane = stackalloc double[Vector512<double>.Count];
        lane.Fill(rest);
        for (var i = 0; i < eight.Length; i++)
            lane[i] = number(eight[i]);
        return Vector512.Create<double>(lane);
    }

    /// <summary>Standard deviates, and the logarithm of the weight with half their squares added.</summary>
    private readonly record struct Node(double X0, double X1, double LogWeight);
}
