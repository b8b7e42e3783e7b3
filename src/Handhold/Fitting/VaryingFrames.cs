using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>The frames of a curve in which levels vary, by the levels of its finest grouping.</summary>
/// <param name="Settings">Distinct settings.</param>
/// <param name="Finest">Place of the finest grouping, the one of most levels, among the groupings.</param>
/// <param name="Upper">Levels of the other groupings, then the days: grouping and level. Days are the grouping after the last.</param>
/// <param name="Levels">Frames of each level of the finest grouping.</param>
/// <param name="Blocks">What hangs together.</param>
internal sealed record VaryingFrames(
    ImmutableArray<Setting> Settings,
    int Finest,
    ImmutableArray<(int Grouping, int Level)> Upper,
    ImmutableArray<ImmutableArray<LevelPart>> Levels,
    ImmutableArray<LevelBlock> Blocks
)
{
    /// <summary>Frames of the largest burst; 1 where none was recorded.</summary>
    internal int LargestBurst =>
        Levels.SelectMany(l => l).SelectMany(p => p.Bursts).Select(b => b.Cells.Sum(c => c.Frames)).DefaultIfEmpty(1).Max();

    /// <summary>Only some of the frames; levels stay, even empty ones.</summary>
    internal VaryingFrames Where(Func<TermCell, bool> wanted) =>
        this with
        {
            Levels =
            [
                .. Levels.Select(parts =>
                    (ImmutableArray<LevelPart>)
                        [
                            .. parts.Select(part =>
                                part with
                                {
                                    Bursts =
                                    [
                                        .. part
                                            .Bursts.Select(b => b with { Cells = [.. b.Cells.Where(wanted)] })
                                            .Where(b => b.Cells.Length > 0),
                                    ],
                                    Afresh = [.. part.Afresh.Where(wanted)],
                                }
                            ),
                        ]
                ),
            ],
        };

    internal static VaryingFrames Of(WhatMoved moved, ImmutableArray<LevelSpread> spreads, CurveData data, LuckKind luck)
    {
        ImmutableArray<Grouping> groupings = [.. spreads.Select(s => s.Grouping)];
        var finest = Enumerable.Range(0, groupings.Length).Where(g => spreads[g].Effect is null).MaxBy(g => groupings[g].Levels.Length);
        ImmutableArray<int> effects = [.. spreads.Select(s => s.Effect).OfType<int>()];
        int[] coarser = [.. Enumerable.Range(0, groupings.Length).Where(g => g != finest)];
        ImmutableArray<(int Grouping, int Level)> upper =
        [
            .. coarser.SelectMany(g => Enumerable.Range(0, groupings[g].Levels.Length).Select(level => (g, level))),
            .. luck == LuckKind.None ? [] : Enumerable.Range(0, data.Days.Length).Select(day => (groupings.Length, day)),
        ];
        var places = upper.Select((u, place) => (u, place)).ToDictionary(u => u.u, u => u.place);
        var days = data.Days.Select((day, i) => (day, i)).ToDictionary(d => d.day, d => d.i);
        Dictionary<Setting, int> settings = [];
        var read = data
            .Cells.Select(c => c.Conditions)
            .Distinct()
            .ToDictionary(
                c => c,
                c =>
                    moved.Read(c) is var setting && settings.TryGetValue(setting, out var place)
                        ? place
                        : settings[setting] = settings.Count
            );
        ImmutableArray<ImmutableArray<LevelPart>> levels =
        [
            .. data
                .Cells.GroupBy(c => groupings[finest].LevelOf(c.Conditions)!.Value)
                .OrderBy(level => level.Key)
                .Select(level =>
                    level.GroupBy(c => (string.Join(',', Above(c.Conditions)), Entry(c.Conditions))).Select(Part).ToImmutableArray()
                ),
        ];
        return new([.. settings.OrderBy(s => s.Value).Select(s => s.Key)], finest, upper, levels, LevelBlocks.Of(upper.Length, levels));

        IEnumerable<int> Above(Conditions conditions)
        {
            foreach (var g in coarser)
                yield return places[(g, groupings[g].LevelOf(conditions)!.Value)];
            if (luck != LuckKind.None)
                yield return places[(groupings.Length, days[(conditions.Photographer, conditions.Session)])];
        }

        // What frames that go into one part have in common beside the levels above.
        (string Weights, Setting? Motion) Entry(Conditions conditions) =>
            effects.IsEmpty
                ? ("", null)
                : (string.Join(' ', effects.Select(e => moved.Read(conditions).Weight(e))), moved.Read(conditions).Motion);

        (double Turning, double Shifting) Weight(int place, Setting setting)
        {
            if (upper[place].Grouping is var g && (g == groupings.Length || spreads[g].Effect is null))
                return (0, 1);
            var (turning, shifting) = setting.Weight(spreads[g].Effect!.Value);
            return setting.Motion is null ? (0, turning + shifting) : (turning, shifting);
        }

        LevelPart Part(IEnumerable<FrameCell> cells) =>
            new(
                [.. Above(cells.First().Conditions)],
                [.. Above(cells.First().Conditions).Select(place => Weight(place, moved.Read(cells.First().Conditions)))],
                effects.IsEmpty ? null : moved.Read(cells.First().Conditions).Motion,
                [
                    .. cells
                        .Where(c => luck != LuckKind.None && c.Conditions.Burst is not null)
                        .GroupBy(c => (c.Conditions.Setup, c.Conditions.Burst))
                        .Select(burst => new TermBurst(Pooled(burst))),
                ],
                Pooled(cells.Where(c => luck == LuckKind.None || c.Conditions.Burst is null))
            );

        ImmutableArray<TermCell> Pooled(IEnumerable<FrameCell> cells) =>
            [
                .. cells
                    .GroupBy(c => (Setting: read[c.Conditions], Exposure: c.Exposure.Log2Seconds))
                    .OrderBy(g => g.Key)
                    .Select(g => new TermCell(g.Key.Setting, g.Key.Exposure, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))),
            ];
    }
}
