using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of effects that lie in their intervals, as it is committed.</summary>
internal static class EffectsInStopsReport
{
    /// <summary>Whether a share may be the level: half a point, or three Monte Carlo errors.</summary>
    internal static bool Holds(ImmutableArray<bool> covered) =>
        Math.Abs(Share(covered) - EffectsInStops.Level) <= Math.Max(0.005, 3 * MonteCarlo.Error(EffectsInStops.Level, covered.Length));

    internal static string Page(IEnumerable<(string Test, ImmutableSortedDictionary<string, ImmutableArray<bool>> Covered)> tests)
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # Do the intervals of effects in stops hold?

            Photographers drawn from the default priors, each with the effects of a test drawn too, shot every setting at six speeds two stops apart, four frames a speed in one
            burst, all on one day; the posterior with these terms was fitted, and its {EffectsInStops.Level:P0} interval of each effect held against the truth. The simulation adds
            blurs by code of its own. The law: each interval contains the effect in {EffectsInStops.Level:P0} of the worlds.

            | test | effect | contained | worlds |
            |---|---|---:|---:|

            """
        );
        foreach (var (test, effects) in tests)
        foreach (var (effect, covered) in effects)
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {test} | {effect} | {Share(covered):P1} ± {MonteCarlo.Error(Share(covered), covered.Length):P1} | {covered.Length} |\n"
            );
        page.Append(
            CultureInfo.InvariantCulture,
            $"""

            ± is one Monte Carlo error. Whether the priors describe anybody is another question: what is shown here is that the intervals are what they say where they do.

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws 10000 effects`, seed {EffectsInStops.Seed}, generator `{Randomness.Seed.Generator}`.

            """
        );
        return page.ToString();
    }

    private static double Share(ImmutableArray<bool> covered) => covered.Count(c => c) / (double)covered.Length;
}
