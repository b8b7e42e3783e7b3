using System.Collections.Immutable;
using System.Globalization;
using Handhold.Models;

namespace Handhold.Curves;

internal sealed partial class TermPosterior
{
    /// <summary>What each term costs or buys, as the change of the half point between two conditions that differ in it alone.</summary>
    internal ImmutableArray<TermInStops> InStops(Conditions reference, ImmutableArray<Conditions> seen, double level)
    {
        var effects = ImmutableArray.CreateBuilder<TermInStops>();
        ImmutableArray<double> close = Moved.Close ? [.. seen.Select(WhatMoved.Magnification).Distinct().Order()] : [];
        foreach (var term in Moved.Terms)
        {
            if (Moved.ChangesSteepness(term.Name))
                continue;
            foreach (var (name, before, after, at) in Steps(term, reference, seen))
                if (close.IsEmpty || term.Name == "magnification")
                    effects.Add(Effect(term, name, before, after, at));
                else
                    foreach (var magnification in close.Length > 1 ? [close[0], close[^1]] : close)
                        effects.Add(
                            Effect(
                                term,
                                name,
                                before with
                                {
                                    Magnification = magnification,
                                },
                                after with
                                {
                                    Magnification = magnification,
                                },
                                [.. at, KeyValuePair.Create("magnification", magnification)]
                            )
                        );
        }

        return effects.ToImmutable();

        TermInStops Effect(
            CurveTerm term,
            string name,
            Conditions before,
            Conditions after,
            ImmutableArray<KeyValuePair<string, double>> at
        )
        {
            var change = Change(before, after);
            return new(
                name,
                at,
                new(change.Quantile(0.5)),
                change.Quantile((1 - level) / 2),
                change.Quantile((1 + level) / 2),
                EffectWords.Of(name, term.Levels.FirstOrDefault(), at, isLinear: false)
            );
        }
    }

    /// <summary>Pairs of conditions that differ in a term alone, and what else to say of them.</summary>
    private static IEnumerable<(string Name, Conditions From, Conditions To, ImmutableArray<KeyValuePair<string, double>> At)> Steps(
        CurveTerm term,
        Conditions reference,
        ImmutableArray<Conditions> seen
    )
    {
        switch (term.Name)
        {
            case "focal":
                var focal = reference.EffectiveEquivalentFocalLength!.Value;
                yield return Step(f => reference with { EquivalentFocalLength = f }, focal, 2 * focal, "focal_eq_mm");
                break;
            case "stabiliser":
                var off = reference with { StabiliserMode = "off", StabiliserStops = 0 };
                foreach (
                    var mode in seen.Where(c => c.EffectiveStabiliserStops != 0)
                        .GroupBy(c => c.StabiliserMode)
                        .OrderBy(g => g.Key, StringComparer.Ordinal)
                )
                {
                    var stops = mode.Max(c => c.StabiliserStops);
                    yield return (
                        mode.Key is null ? term.Name : $"{term.Name}={mode.Key}",
                        off,
                        off with
                        {
                            StabiliserMode = mode.Key,
                            StabiliserStops = stops,
                        },
                        stops is { } rated ? [KeyValuePair.Create("stabiliser_stops", rated)] : []
                    );
                }

                break;
            case "magnification":
                yield return Step(m => reference with { Magnification = m }, 0, seen.Max(WhatMoved.Magnification), "magnification");
                break;
            case "subjectSpeed":
                yield return Step(v => reference with { SubjectSpeed = v }, 0, seen.Max(c => c.SubjectSpeed ?? 0), "subject_speed_mm_s");
                break;
            case "firstFrame":
                yield return (term.Name, reference with { BurstPosition = 2 }, reference with { BurstPosition = 1 }, []);
                break;
            case var column when term.Levels.IsEmpty:
                var low = seen.Min(c => Number(c[column]));
                yield return (column, reference.With(column, Text(low)), reference.With(column, Text(low + 1)), []);
                break;
            default:
                var stated = term.Columns[^1];
                foreach (var level in term.Levels.Skip(1))
                    yield return ($"{term.Name}={level}", Stated(reference, stated, term.Levels[0]), Stated(reference, stated, level), []);
                break;
        }

        (string, Conditions, Conditions, ImmutableArray<KeyValuePair<string, double>>) Step(
            Func<double, Conditions> under,
            double from,
            double to,
            string column
        ) => (term.Name, under(from), under(to), [KeyValuePair.Create(column, to)]);
    }

    /// <summary>A stated motion says more than a speed left over from the reference.</summary>
    private static Conditions Stated(Conditions reference, string column, string level) =>
        (column == "subject_motion" ? reference with { SubjectSpeed = null } : reference).With(column, level);

    private static double Number(string? text) => double.Parse(text!, CultureInfo.InvariantCulture);

    private static string Text(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
