using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Simulation;

namespace Handhold.Cli;

/// <summary>Which frames are invented.</summary>
internal sealed class ShootOptions
{
    private readonly Option<string[]> _at = Shared.At();
    private readonly Option<string> _bursts = Option("--bursts", "N", "Bursts at each speed on each day [2].");
    private readonly Option<string> _burstsOf = Option("--bursts-of", "M", "Frames in each burst [3].");
    private readonly Option<string> _days = Option("--days", "N", "Days [1].");
    private readonly Option<string> _seed = Option("--seed", "N", "Seed; same seed, same frames [1].");

    public Option<string> Out { get; } = Option("--out", "TABLE.csv", "Table to write; without it the table goes to standard output.");

    public ImmutableArray<Option> All => [_at, _bursts, _burstsOf, _days, _seed, Out];

    public int Seed(ParseResult given) => given.ReadOr(_seed, Reading.Whole, 1);

    public ShootPlan Plan(ParseResult given, Conditions conditions) =>
        new()
        {
            Speeds = [.. given.Speeds(_at)],
            Bursts = given.ReadOr(_bursts, Reading.Count, 2),
            BurstOf = given.ReadOr(_burstsOf, Reading.Count, 3),
            Sessions =
            [
                .. Enumerable.Range(1, given.ReadOr(_days, Reading.Count, 1)).Select(day => FormattableString.Invariant($"day {day}")),
            ],
            Conditions = conditions,
        };

    private static Option<string> Option(string name, string help, string description) =>
        new(name) { HelpName = help, Description = description };
}
