using System.Collections.Immutable;

namespace Handhold;

/// <summary>What a curve was fitted to, pooled.</summary>
public sealed class CurveData
{
    internal CurveData(
        int rows,
        int unjudged,
        int sessions,
        int bursts,
        ImmutableArray<FrameCell> cells,
        ImmutableArray<SpeedCount> speeds,
        Criterion? criterion,
        ImmutableArray<string> sessionLabels
    ) =>
        (Rows, Unjudged, Sessions, Bursts, Cells, Speeds, Criterion, SessionLabels) = (
            rows,
            unjudged,
            sessions,
            bursts,
            cells,
            speeds,
            criterion,
            sessionLabels
        );

    /// <summary>Rows of the table.</summary>
    public int Rows { get; }

    /// <summary>Frames not judged.</summary>
    public int Unjudged { get; }

    /// <summary>Sessions; frames without a label are one session of their photographer.</summary>
    public int Sessions { get; }

    /// <summary>Recorded bursts of at least two frames; 0 when none.</summary>
    public int Bursts { get; }

    /// <summary>Sufficient statistics: cells of equal session, burst and exposure, in a canonical order.</summary>
    public ImmutableArray<FrameCell> Cells { get; }

    /// <summary>Frames not judged, in cells as <see cref="Cells"/> are; fewer than <see cref="Unjudged"/> where an old file does not say where they were.</summary>
    public ImmutableArray<FrameCell> NotJudged { get; internal init; } = [];

    /// <summary>Counts pooled by exposure, fastest first.</summary>
    public ImmutableArray<SpeedCount> Speeds { get; }

    /// <summary>The criterion, where one was recorded.</summary>
    public Criterion? Criterion { get; }

    /// <summary>Labels of the sessions, in byte order; empty when none was recorded.</summary>
    public ImmutableArray<string> SessionLabels { get; }

    /// <summary>Whether within some session the speeds were shot in order.</summary>
    internal bool IsOrderConfounded { get; init; }

    /// <summary>Frames judged where rejects were probably deleted before, and frames that were probably deleted themselves.</summary>
    internal (int Judged, int Deleted) Survivors { get; init; }

    /// <summary>The days tested, by photographer, then by label, in byte order.</summary>
    internal ImmutableArray<(string? Photographer, string? Session)> Days =>
        [
            .. Cells
                .Select(c => (c.Conditions.Photographer, c.Conditions.Session))
                .Distinct()
                .OrderBy(d => d.Photographer, StringComparer.Ordinal)
                .ThenBy(d => d.Session, StringComparer.Ordinal),
        ];

    /// <summary>Frames judged.</summary>
    public int Frames => Speeds.Sum(s => s.Frames);

    /// <summary>Keepers among them.</summary>
    public int Keepers => Speeds.Sum(s => s.Keepers);

    /// <summary>Fastest speed tested.</summary>
    public ShutterSpeed Fastest => Speeds[0].Exposure;

    /// <summary>Slowest speed tested.</summary>
    public ShutterSpeed Slowest => Speeds[^1].Exposure;

    /// <summary>Frames and keepers at each speed of the frames shot under these conditions, fastest first; what the conditions are silent of may be anything.</summary>
    /// <param name="conditions">What the frames have in common.</param>
    public ImmutableArray<SpeedCount> SpeedsUnder(Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        string[] stated = [.. conditions.Recorded];
        return SpeedCount.Of(Cells.Where(cell => stated.All(c => cell.Conditions[c] == conditions[c])));
    }

    /// <summary>Conditions that frames were shot under: first those nearest to the references of the terms, then those of most frames; any but the first of a burst, unless the place is a term.</summary>
    internal static Conditions Typical(ImmutableArray<FrameCell> cells, IEnumerable<CurveTerm> terms, Func<Conditions, int> fromReference)
    {
        var isTerm = terms.Any(t => t.Name == "burst_position");
        return cells
            .GroupBy(c => c.Conditions with { Session = null, Burst = null, BurstPosition = isTerm ? c.Conditions.BurstPosition : null })
            .OrderBy(g => fromReference(g.Key))
            .ThenByDescending(g => g.Sum(c => c.Frames))
            .ThenBy(g => g.Key.ToString(), StringComparer.Ordinal)
            .First()
            .Key;
    }
}
