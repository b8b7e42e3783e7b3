using System.Globalization;

namespace Handhold.Cli;

/// <summary>Levels that a posterior fitted together, for people: how they spread, where each stands, and how much it borrowed.</summary>
internal static class LevelReport
{
    public static void Write(Page page, VaryingLevels group, double level)
    {
        page.Blank();
        page.Table(
            [$"Spread of {GroupReport.Counted(group.Varying, group.Levels.Length)}", "Estimate", Plain.Level(level) + " interval"],
            [.. group.Spreads.Select(Row), .. group.Correlation is { } correlation ? new[] { Row(correlation) } : []]
        );
        GroupReport.WriteLevels(page, group.Varying, group.Levels);
        WriteDoubts(page, group);
    }

    /// <summary>What to say of a level, and of how many more.</summary>
    private static void WriteDoubts(Page page, VaryingLevels group)
    {
        VaryingLevel[] doubted = [.. group.Levels.Where(l => !l.Statuses.IsEmpty)];
        if (doubted.Length > 0)
            page.Text(
                doubted[0].Statuses[0].Message + (doubted.Length == 1 ? "" : $" So it is for {doubted.Length - 1} more: see --json."),
                mark: "Mind: "
            );
    }

    private static string[] Row(ParameterSummary spread) =>
        spread.Name switch
        {
            "tau0" => Numbers("half-keeper speeds, sd", spread, " stops"),
            "log2b" => Numbers("steepness, sd of its logarithm to base two", spread, ""),
            "correlation" =>
            [
                "their correlation",
                Share(spread.Median),
                $"{Share(spread.Interval.Lower)} to {Share(spread.Interval.Upper)}",
            ],
            var term => Numbers($"what {Unit(term)} buys, sd", spread, " stops"),
        };

    /// <summary>What an effect is counted for: a label, or one unit of a number.</summary>
    private static string Unit(string effect) =>
        effect switch
        {
            "stabiliser" => "a rated stop",
            "focal" => "a doubled focal length",
            "magnification" => "a doubled 1 + magnification",
            "firstFrame" => "the first frame",
            _ => effect.Contains('=', StringComparison.Ordinal) ? effect : $"one unit of {effect}",
        };

    /// <summary>Two digits, no minus before a zero.</summary>
    private static string Share(double number) => (Math.Round(number, 2) + 0.0).ToString("0.00", CultureInfo.InvariantCulture);

    private static string[] Numbers(string what, ParameterSummary spread, string unit) =>
        [what, Plain.Stops(spread.Median) + unit, $"{Plain.Stops(spread.Interval.Lower)} to {Plain.Stops(spread.Interval.Upper)}{unit}"];
}
