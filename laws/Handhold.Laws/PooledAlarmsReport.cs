using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of alarms of fits in which levels vary, as it is committed.</summary>
internal static class PooledAlarmsReport
{
    internal static string Page(IReadOnlyList<(string Structure, int Fits, ImmutableSortedDictionary<string, int> Told)> parts)
    {
        var (fits, alarms) = (parts.Sum(p => p.Fits), parts.Sum(p => p.Told.Values.Sum()));
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # How often does a fit of levels that vary cry wolf?

            {fits} invented tables that obey the model they are fitted with: six to twenty photographers with one to three setups each, or with four lenses in all hands; seven speeds a stop apart, six or twelve frames a cell, a fifth of
            the cells not shot; 0.2 to 1.2 logits between photographers, 0.1 to 0.8 between setups, 0.1 to 0.4 between slopes. Every interval of coefficients and spreads is asked for. Whatever status a fit carries is counted, and every
            solver that stops short; `noGroupSpread`, a spread estimated as none, is a result and no alarm, and `labelsRepeat` says how crossed lenses were taken.

            | what varies | fits | alarms |
            |---|---:|---|

            """
        );
        foreach (var (structure, count, told) in parts)
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {structure} | {count} | {(told.IsEmpty ? "none" : string.Join(", ", told.Select(t => FormattableString.Invariant($"{t.Value} {Code(t.Key)}"))))} |\n"
            );
        page.Append(
            CultureInfo.InvariantCulture,
            $"""

            {alarms} in all, {(double)alarms / fits:P2}. The law: below {PooledAlarms.Allowed:P1}.

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws {fits} levels`, seed {PooledAlarms.Seed}, generator `{Randomness.Seed.Generator}`.

            """
        );
        return page.ToString();
    }

    // As files spell it.
    private static string Code(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
