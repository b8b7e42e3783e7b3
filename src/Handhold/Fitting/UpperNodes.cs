using System.Collections.Immutable;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>Nodes for integrals over the few directions in which what stands above the finest levels moves their frames: standard deviates, and the logarithm of the weight with half their squares added.</summary>
/// <remarks>
/// Products of Gauss and Hermite's nodes; three or four directions may have the fully symmetric formula of fifth degree instead, 2 n² + 1 nodes that are exact for polynomials up to that
/// degree: McNamee and Stenger (1967), Numerische Mathematik 10, 327-344. More directions have none, or pairs of opposite normal draws, always the same, so that
/// noise common to all parameters drops out of their differences.
/// </remarks>
internal sealed class UpperNodes
{
    /// <summary>Directions for which there are formulas: with more, weights become negative.</summary>
    internal const int Most = 4;

    private const long DrawnFrom = 20250917;
    private readonly int _pairs;
    private readonly ImmutableArray<ImmutableArray<(ImmutableArray<double> At, double LogWeight)>> _nodes;

    /// <param name="one">Nodes for one direction.</param>
    /// <param name="two">Nodes in each of two.</param>
    /// <param name="more">Nodes in each of three or four; null for the formula of fifth degree.</param>
    /// <param name="pairs">Pairs of draws for more directions.</param>
    internal UpperNodes(int one, int two, int? more, int pairs)
    {
        _pairs = pairs;
        _nodes =
        [
            [.. Product(one, 1)],
            [.. Product(two, 2)],
            .. Enumerable.Range(3, Most - 2).Select(n => more is { } count ? Product(count, n).ToImmutableArray() : [.. FifthDegree(n)]),
        ];
    }

    /// <summary>The nodes for so many directions, one or more.</summary>
    internal IEnumerable<(ImmutableArray<double> At, double LogWeight)> this[int directions] =>
        directions > Most ? Pairs(directions) : _nodes[directions - 1];

    /// <summary>Whether they check what others find: there are nodes for any number of directions, and tops below are sought at each rather than followed to first order.</summary>
    internal bool IsCheck => _pairs > 0;

    private IEnumerable<(ImmutableArray<double> At, double LogWeight)> Pairs(int directions)
    {
        for (var pair = 0; pair < _pairs; pair++)
        {
            var chance = Seed.From(DrawnFrom).Stream(pair);
            ImmutableArray<double> at = [.. Enumerable.Range(0, directions).Select(_ => chance.Normal())];
            var logWeight = at.Sum(x => x * x) / 2 - Math.Log(2 * _pairs);
            yield return (at, logWeight);
            yield return ([.. at.Select(x => -x)], logWeight);
        }
    }

    private static IEnumerable<(ImmutableArray<double> At, double LogWeight)> Product(int count, int directions)
    {
        var line = HermiteNodes.Of(count);
        IEnumerable<(ImmutableArray<double> At, double LogWeight)> nodes = [([], 0)];
        for (var n = 0; n < directions; n++)
            nodes = nodes.SelectMany(node => line.At.Zip(line.LogWeight, (x, log) => (node.At.Add(x), node.LogWeight + log)));
        return nodes;
    }

    private static IEnumerable<(ImmutableArray<double> At, double LogWeight)> FifthDegree(int directions)
    {
        var square = directions + 2.0;
        ImmutableArray<double> centre = [.. new double[directions]];
        yield return (centre, Math.Log(2 / square));
        for (var i = 0; i < directions; i++)
        {
            if (directions < Most)
                foreach (var x in Both(Math.Sqrt(square)))
                    yield return (centre.SetItem(i, x), Math.Log((4 - directions) / (2 * square * square)) + square / 2);
            for (var j = 0; j < i; j++)
                foreach (var x in Both(Math.Sqrt(square / 2)))
                foreach (var y in Both(Math.Sqrt(square / 2)))
                    yield return (centre.SetItem(i, x).SetItem(j, y), -2 * Math.Log(square) + square / 2);
        }

        static double[] Both(double x) => [x, -x];
    }
}
