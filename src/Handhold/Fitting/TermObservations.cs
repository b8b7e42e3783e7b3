using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>The frames of one curve with terms: distinct settings, and by session the bursts and the frames held afresh.</summary>
internal sealed record TermObservations(
    ImmutableArray<Setting> Settings,
    ImmutableArray<(ImmutableArray<TermBurst> Bursts, ImmutableArray<TermCell> Afresh)> Sessions
)
{
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

    internal static TermObservations From(WhatMoved model, ImmutableArray<FrameCell> cells, LuckKind luck)
    {
        var settings = cells.Select(c => c.Conditions).Distinct().ToDictionary(c => c, model.Read);
        ImmutableArray<Setting> distinct = [.. settings.Values.Distinct()];
        var sessions = cells
            .GroupBy(c => luck == LuckKind.None ? default : (c.Conditions.Photographer, c.Conditions.Session))
            .OrderBy(g => g.Key.Photographer, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Session, StringComparer.Ordinal);
        return new(distinct, [.. sessions.Select(s => (Bursts([.. s]), Pooled(s.Where(Afresh))))]);

        bool Afresh(FrameCell cell) => luck == LuckKind.None || cell.Conditions.Burst is null;

        ImmutableArray<TermBurst> Bursts(FrameCell[] session) =>
            [
                .. session
                    .Where(c => !Afresh(c))
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
