using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>The frames of one curve as its likelihood sees them: sessions of burst patterns over distinct exposures.</summary>
/// <param name="Exposures">Distinct exposures, log2 seconds, rising.</param>
/// <param name="Frames">Frames at each exposure.</param>
/// <param name="Sessions">Patterns of each session.</param>
internal sealed record CurveObservations(
    ImmutableArray<double> Exposures,
    ImmutableArray<double> Frames,
    ImmutableArray<ImmutableArray<BurstPattern>> Sessions
)
{
    /// <summary>Bursts in all.</summary>
    internal double Bursts { get; } = Sessions.Sum(s => s.Sum(p => (double)p.Bursts));

    /// <summary>Reads canonical cells: those of one session and burst share luck; frames without a burst were each held afresh.</summary>
    internal static CurveObservations From(ImmutableArray<FrameCell> cells, LuckKind luck)
    {
        ImmutableArray<double> exposures = [.. cells.Where(c => c.Frames > 0).Select(c => c.Exposure.Log2Seconds).Distinct().Order()];
        var sessions = cells
            .Where(c => c.Frames > 0)
            .GroupBy(c => luck == LuckKind.None ? default : (c.Conditions.Photographer, c.Conditions.Session))
            .OrderBy(g => g.Key.Photographer, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Session, StringComparer.Ordinal)
            .Select(g => Patterns([.. g], exposures, luck));
        var frames = exposures.Select(x => cells.Where(c => c.Exposure.Log2Seconds == x).Sum(c => (double)c.Frames));
        return new(exposures, [.. frames], [.. sessions]);
    }

    private static ImmutableArray<BurstPattern> Patterns(ImmutableArray<FrameCell> cells, ImmutableArray<double> exposures, LuckKind luck)
    {
        var counts = new SortedDictionary<string, (ImmutableArray<(int, int, int)> Cells, int Bursts)>(StringComparer.Ordinal);
        var bursts =
            luck == LuckKind.None
                ? []
                : cells.Where(c => c.Conditions.Burst is not null).GroupBy(c => (c.Conditions.Setup, c.Conditions.Burst));
        foreach (var burst in bursts)
            Add(
                1,
                [
                    .. burst
                        .GroupBy(c => exposures.BinarySearch(c.Exposure.Log2Seconds))
                        .OrderBy(g => g.Key)
                        .Select(g => (g.Key, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))),
                ]
            );
        foreach (
            var speed in cells
                .Where(c => luck == LuckKind.None || c.Conditions.Burst is null)
                .GroupBy(c => exposures.BinarySearch(c.Exposure.Log2Seconds))
        )
        {
            var (frames, keepers) = (speed.Sum(c => c.Frames), speed.Sum(c => c.Keepers));
            if (luck == LuckKind.None)
            {
                Add(1, [(speed.Key, frames, keepers)]);
                continue;
            }

            if (keepers > 0)
                Add(keepers, [(speed.Key, 1, 1)]);
            if (frames > keepers)
                Add(frames - keepers, [(speed.Key, 1, 0)]);
        }

        return [.. counts.Select(c => new BurstPattern(c.Key, c.Value.Cells, c.Value.Bursts))];

        void Add(int times, ImmutableArray<(int Exposure, int Frames, int Keepers)> pattern)
        {
            var key = string.Join(';', pattern.Select(p => FormattableString.Invariant($"{p.Exposure:D6}:{p.Frames}:{p.Keepers}")));
            counts[key] = (pattern, counts.TryGetValue(key, out var known) ? known.Bursts + times : times);
        }
    }
}
