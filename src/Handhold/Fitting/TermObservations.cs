using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>The frames of one curve with terms: distinct settings, and by session the bursts and the frames held afresh.</summary>
internal sealed record TermObservations(
    ImmutableArray<Setting> Settings,
    ImmutableArray<(ImmutableArray<TermBurst> Bursts, ImmutableArray<TermCell> Afresh)> Sessions
)
{
    /// <summary>Frames of the largest burst; 1 where none was recorded.</summary>
    internal int LargestBurst => Sessions.SelectMany(s => s.Bursts).Select(b => b.Cells.Sum(c => c.Frames)).DefaultIfEmpty(1).Max();

    /// <summary>Only some of the frames; sessions and settings stay, even empty ones.</summary>
    internal TermObservations Where(Func<TermCell, bool> wanted) =>
        this with
        {
            Sessions =
            [
                .. Sessions.Select(s =>
                    (
                        (ImmutableArray<TermBurst>)
                            [.. s.Bursts.Select(b => b with { Cells = [.. b.Cells.Where(wanted)] }).Where(b => b.Cells.Length > 0)],
                        (ImmutableArray<TermCell>)[.. s.Afresh.Where(wanted)]
                    )
                ),
            ],
        };

    /// <summary>The units that share no luck but that of a day: bursts, and frames of equal conditions held afresh, each alone among these settings and sessions.</summary>
    internal IEnumerable<(ImmutableArray<FrameCell> Cells, TermObservations Alone)> Units(
        WhatMoved model,
        ImmutableArray<FrameCell> cells,
        LuckKind luck
    )
    {
        var sessions = cells.GroupBy(c => Day(c, luck)).OrderBy(g => g.Key.Photographer, StringComparer.Ordinal);
        var none = Sessions.Select(_ => ((ImmutableArray<TermBurst>)[], (ImmutableArray<TermCell>)[])).ToImmutableArray();
        return from session in sessions.ThenBy(g => g.Key.Session, StringComparer.Ordinal).Select((frames, index) => (frames, index))
            from unit in session.frames.GroupBy(c => Unit(c, luck))
            select (
                (ImmutableArray<FrameCell>)[.. unit],
                this with
                {
                    Sessions = none.SetItem(session.index, From(model, [.. unit], luck, Settings).Sessions[0]),
                }
            );
    }

    internal static TermObservations From(WhatMoved model, ImmutableArray<FrameCell> cells, LuckKind luck) =>
        From(model, cells, luck, null);

    /// <summary>What frames of one unit have in common beside their day.</summary>
    internal static (string? Setup, string? Burst, Conditions? Alike, ShutterSpeed Speed) Unit(FrameCell cell, LuckKind luck) =>
        IsAfresh(cell, luck) ? (null, null, cell.Conditions, cell.Exposure) : (cell.Conditions.Setup, cell.Conditions.Burst, null, default);

    internal static bool IsAfresh(FrameCell cell, LuckKind luck) => luck == LuckKind.None || cell.Conditions.Burst is null;

    private static (string? Photographer, string? Session) Day(FrameCell cell, LuckKind luck) =>
        luck == LuckKind.None ? default : (cell.Conditions.Photographer, cell.Conditions.Session);

    private static TermObservations From(WhatMoved model, ImmutableArray<FrameCell> cells, LuckKind luck, ImmutableArray<Setting>? known)
    {
        var settings = cells.Select(c => c.Conditions).Distinct().ToDictionary(c => c, model.Read);
        var distinct = known ?? [.. settings.Values.Distinct()];
        var sessions = cells
            .GroupBy(c => Day(c, luck))
            .OrderBy(g => g.Key.Photographer, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Session, StringComparer.Ordinal);
        return new(distinct, [.. sessions.Select(s => (Bursts([.. s]), Pooled(s.Where(c => IsAfresh(c, luck)))))]);

        ImmutableArray<TermBurst> Bursts(FrameCell[] session) =>
            [
                .. session
                    .Where(c => !IsAfresh(c, luck))
                    .GroupBy(c => (c.Conditions.Setup, c.Conditions.Burst))
                    .OrderBy(g => g.Key.Setup, StringComparer.Ordinal)
                    .ThenBy(g => g.Key.Burst, StringComparer.Ordinal)
                    .Select(g => new TermBurst(Pooled(g))),
            ];

        ImmutableArray<TermCell> Pooled(IEnumerable<FrameCell> group) =>
            [
                .. group
                    .GroupBy(c => (Setting: distinct.IndexOf(settings[c.Conditions]), Exposure: c.Exposure.Log2Seconds))
                    .OrderBy(g => g.Key)
                    .Select(g => new TermCell(g.Key.Setting, g.Key.Exposure, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))),
            ];
    }
}
