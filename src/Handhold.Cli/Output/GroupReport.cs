using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Cli;

/// <summary>Levels that were fitted together, for people: how they spread, where each stands, and how much it borrowed.</summary>
internal static class GroupReport
{
    private const int MostLevels = 20;

    /// <summary>Whose the numbers of the whole curve are.</summary>
    public static string Typical(ImmutableArray<Varying> varies) =>
        varies.IsEmpty ? "" : $"A typical {string.Join(" and ", varies.Select(v => v.Column))}: ";

    public static void Write(Page page, GroupSpread group)
    {
        page.Blank();
        var column = group.Varying.Column;
        if (group.InStops is { } stops)
            page.Text(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Between {Plain.Of(group.Levels.Length, column)}{(group.Varying.Within.IsEmpty ? "" : $" within {group.Varying.Within[^1]}")} half-keeper speeds spread by {stops:0.00} stops (standard deviation)."
                )
            );
        page.Table(
            [$"Spread of {column}, link scale", "Estimate", "Standard error", "Interval"],
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
        page.Blank();
        page.Table([column, "Frames", "Half-keeper speed", "Interval", "Borrowed"], group.Levels.Take(MostLevels).Select(Row));
        if (group.Levels.Length > MostLevels)
            page.Text(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"And {group.Levels.Length - MostLevels} more, whose effects are in --json; ask for one with --whose this."
                )
            );
    }

    private static string[] Row(GroupLevel level) =>
        [
            level.ToString(),
            level.Frames.ToString(CultureInfo.InvariantCulture),
            level.HalfKeeperExposure is { } exposure ? Plain.Speed(exposure) : "none",
            level.HalfKeeperExposure is null ? "" : Plain.Set(level.HalfKeeperSet),
            Plain.Percent(level.Borrowed),
        ];
}
