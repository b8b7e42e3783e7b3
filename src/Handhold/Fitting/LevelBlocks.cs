using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>Splits levels into blocks that share nothing.</summary>
internal static class LevelBlocks
{
    internal static ImmutableArray<LevelBlock> Of(int upper, ImmutableArray<ImmutableArray<LevelPart>> levels)
    {
        int[] parent = [.. Enumerable.Range(0, upper)];
        int[][] shared = [.. levels.Select(parts => parts.SelectMany(p => p.Above).Distinct().Order().ToArray())];
        foreach (var places in shared)
            for (var i = 1; i < places.Length; i++)
                parent[Root(places[i])] = Root(places[0]);
        return
        [
            .. Enumerable
                .Range(0, levels.Length)
                .GroupBy(k => shared[k].Length == 0 ? upper + k : Root(shared[k][0]))
                .Select(block => new LevelBlock([.. block.SelectMany(k => shared[k]).Distinct().Order()], [.. block])),
        ];

        int Root(int place) => parent[place] == place ? place : parent[place] = Root(parent[place]);
    }
}
