using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Cli;

/// <summary>Levels that were fitted together, for people: how they spread, where each stands, and how much it borrowed.</summary>
internal static class GroupReport
{
    private const int MostLevels = 20;

    /// <summary>Whose the numbers of the whole curve are.</summary>
    public static string Typical(ImmutableArray<Varying> varies) =>
        varies.IsEmpty ? "" : $"A typical {string.Join(" and ", varies.Select(v => v.Column).Distinct())}: ";

    public static void Write(Page page, GroupSpread group)
    {
        page.Blank();
        var what = group.Varying.Term is { } term ? $"what {term} buys spreads" : "half-keeper speeds spread";
        if (group.InStops is { } stops)
            page.Text(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Between {Counted(group.Varying, group.Levels.Length)} {what} by {stops:0.00} stops (standard deviation)."
                )
            );
        page.Table(
            [$"Spread of {group.Varying.Column}, link scale", "Estimate", "Standard error", "Interval"],
            [
                .. group.Spreads.Select(s =>
                    new[]
                    {
                        $"sd of {s.Name}",
                        s.Estimate is { } sd ? LinearReport.Number(sd) : "none",
                        s.StandardError is { } error ? LinearReport.Number(error) : "",
                        LinearReport.Ends(s.Interval.Lower, s.Interval.Upper, LinearReport.Number),
                    }
                ),
                .. group.Correlation is { } correlation
                    ? new[] { new[] { "their correlation", LinearReport.Number(correlation), "", "" } }
                    : [],
            ]
        );
        WriteLevels(page, group.Varying, group.Levels);
    }

    /// <summary>What the term buys at each level, and how much was borrowed.</summary>
    private static void WriteTerm(Page page, Varying varying, IReadOnlyList<FittedLevel> levels) =>
        page.Table(
            [varying.Column, "Frames", "What it buys (+) or costs (-)", "Estimate", "Interval", "Borrowed"],
            levels
                .Take(MostLevels)
                .SelectMany(level => level.InStops.IsEmpty ? [Row(level, varying.Term!)] : level.InStops.Select(stops => Row(level, stops)))
        );

    private static string[] Row(FittedLevel level, string term) =>
        [level.ToString(), Frames(level), term, "depends on the rate", "", Plain.Percent(level.Borrowed)];

    private static string[] Row(FittedLevel level, TermInStops known) =>
        [
            level.ToString(),
            Frames(level),
            string.Join(", ", known.Words),
            known.Stops is { } stops ? stops.ToString() : "not given",
            LinearReport.Ends(known.Lower, known.Upper, Plain.Change) + " stops",
            Plain.Percent(level.Borrowed),
        ];

    private static string Frames(FittedLevel level) => level.Frames.ToString(CultureInfo.InvariantCulture);

    /// <summary>Where each level stands, and how much it borrowed.</summary>
    public static void WriteLevels(Page page, Varying varying, IReadOnlyList<FittedLevel> levels)
    {
        page.Blank();
        if (varying.Term is null)
            page.Table([varying.Column, "Frames", "Half-keeper speed", "Interval", "Borrowed"], levels.Take(MostLevels).Select(Row));
        else
            WriteTerm(page, varying, levels);
        More(page, levels.Count);
    }

    private static void More(Page page, int levels)
    {
        if (levels > MostLevels)
            page.Text(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"And {levels - MostLevels} more, whose effects are in --json; ask for one with --whose this."
                )
            );
    }

    /// <summary>3 setups within photographer.</summary>
    public static string Counted(Varying varying, int levels) =>
        Plain.Of(levels, varying.Column) + (varying.Within.IsEmpty ? "" : $" within {varying.Within[^1]}");

    private static string[] Row(FittedLevel level) =>
        [
            level.ToString(),
            Frames(level),
            level.HalfKeeperExposure is { } exposure ? Plain.Speed(exposure) : "none",
            level.HalfKeeperExposure is null ? "" : Plain.Set(level.HalfKeeperSet),
            Plain.Percent(level.Borrowed),
        ];
}
