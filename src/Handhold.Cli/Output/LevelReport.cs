using System.Globalization;

namespace Handhold.Cli;

/// <summary>Levels that a posterior fitted together, for people: how they spread, where each stands, and how much it borrowed.</summary>
internal static class LevelReport
{
    private const int MostLevels = 20;

    public static void Write(Page page, VaryingLevels group, double level)
    {
        page.Blank();
        var column = group.Varying.Column;
        page.Table(
            [
                $"Spread of {Plain.Of(group.Levels.Length, column)}{(group.Varying.Within.IsEmpty ? "" : $" within {group.Varying.Within[^1]}")}",
                "Estimate",
                Plain.Level(level) + " interval",
            ],
            [.. group.Spreads.Select(Row), .. group.Correlation is { } correlation ? new[] { Row(correlation) } : []]
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

    private static string[] Row(ParameterSummary spread) =>
        spread.Name switch
        {
            "tau0" => Numbers("half-keeper speeds, sd", spread, " stops"),
            "log2b" => Numbers("steepness, sd of its logarithm to base two", spread, ""),
            _ => ["their correlation", Share(spread.Median), $"{Share(spread.Interval.Lower)} to {Share(spread.Interval.Upper)}"],
        };

    /// <summary>Two digits, no minus before a zero.</summary>
    private static string Share(double number) => (Math.Round(number, 2) + 0.0).ToString("0.00", CultureInfo.InvariantCulture);

    private static string[] Numbers(string what, ParameterSummary spread, string unit) =>
        [what, Plain.Stops(spread.Median) + unit, $"{Plain.Stops(spread.Interval.Lower)} to {Plain.Stops(spread.Interval.Upper)}{unit}"];

    private static string[] Row(VaryingLevel level) =>
        [
            level.ToString(),
            level.Frames.ToString(CultureInfo.InvariantCulture),
            level.HalfKeeperExposure is { } exposure ? Plain.Speed(exposure) : "none",
            level.HalfKeeperExposure is null ? "" : Plain.Set(level.HalfKeeperSet),
            Plain.Percent(level.Borrowed),
        ];
}
