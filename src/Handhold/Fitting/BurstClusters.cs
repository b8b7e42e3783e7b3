using System.Collections.Immutable;
using Handhold.Models;
using Handhold.Solvers;
using Row = (int Place, int Frames, int Keepers);

namespace Handhold.Fitting;

/// <summary>The frames of a curve as clusters: a burst is one, and so is a frame that was held afresh. Equal clusters are counted.</summary>
internal static class BurstClusters
{
    /// <summary>The clusters; null where no two frames share a burst.</summary>
    /// <exception cref="CellException">A burst has several rates, and its luck is to be beta-binomial.</exception>
    internal static ClusteredProblem? Of(KeeperModel model, ImmutableArray<FrameCell> cells, DesignLayout layout, string place)
    {
        var (rows, placeOf) = layout.Rows(cells, model).Pool();
        var groups = Enumerable
            .Range(0, cells.Length)
            .ToLookup(i => cells[i].Conditions is { Burst: { } burst } c ? (c.Photographer, c.Setup, c.Session, burst) : default);
        var bursts = groups.Where(g => g.Key.burst is not null && g.Sum(i => (long)cells[i].Frames) > 1).ToArray();
        if (bursts.Length == 0)
            return null;
        var shared = bursts.Select(g => Counts([.. g])).ToArray();
        if (model.Luck == LuckKind.BetaBinomial && Array.FindIndex(shared, burst => burst.Length > 1) is >= 0 and var several)
            throw new CellException(
                place,
                $"burst {bursts[several].Key.burst} has frames at several speeds or conditions, and a beta-binomial burst has one rate.",
                "Take normal luck (--luck normal), give each speed and condition a burst of its own, or leave the place in the burst out (--no-terms)."
            );
        var alone = Counts([.. Enumerable.Range(0, cells.Length).Except(bursts.SelectMany(g => g))]);
        return Gather(rows, shared, alone);

        Row[] Counts(int[] of) =>
            [
                .. of.GroupBy(i => placeOf[i])
                    .OrderBy(g => g.Key)
                    .Select(g => (g.Key, g.Sum(i => cells[i].Frames), g.Sum(i => cells[i].Keepers))),
            ];
    }

    private static ClusteredProblem Gather(BinomialProblem rows, Row[][] shared, Row[] alone)
    {
        SortedDictionary<string, (Row[] Rows, int Count)> alike = new(StringComparer.Ordinal);
        foreach (var burst in shared)
            Add(burst, 1);
        foreach (var (place, frames, keepers) in alone)
        {
            Add([(place, 1, 1)], keepers);
            Add([(place, 1, 0)], frames - keepers);
        }

        Row[] all = [.. alike.Values.SelectMany(a => a.Rows)];
        int[] starts = [0, .. alike.Values.Select(a => a.Rows.Length)];
        for (var c = 1; c < starts.Length; c++)
            starts[c] += starts[c - 1];
        Row[] saturated = [.. shared.SelectMany(burst => burst), .. alone];
        return new(
            rows.WithRows(all),
            [.. starts],
            [.. alike.Values.Select(a => a.Count)],
            saturated.Length,
            saturated.Sum(r => Part(r.Keepers, r.Frames) + Part(r.Frames - r.Keepers, r.Frames))
        );

        void Add(Row[] cluster, int times)
        {
            if (times == 0)
                return;
            var key = string.Join(';', cluster.Select(r => FormattableString.Invariant($"{r.Place:D9}:{r.Frames}:{r.Keepers}")));
            alike[key] = (cluster, times + (alike.TryGetValue(key, out var known) ? known.Count : 0));
        }

        static double Part(double count, double frames) => count == 0 ? 0 : count * Math.Log(count / frames);
    }
}
