using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>What is known of each level, and of how levels spread.</summary>
internal static class VaryingSummaries
{
    internal static ImmutableArray<VaryingLevels> Of(KeeperModel model, CurveData data, VaryingPosterior posterior, Conditions reference)
    {
        var (setting, tables, reading) = (posterior.Moved.Read(reference), new Dictionary<double, BurstCurve>(), new Lock());
        ImmutableArray<Conditions> seen = [.. data.Cells.Select(c => c.Conditions).Distinct()];
        return
        [
            .. posterior
                .Spreads.Index()
                .GroupBy(s => s.Item.Grouping)
                .Select(s => Grouping(s.First().Item, [.. s.Select(one => one.Index)])),
        ];

        // Of a term one spread for each of its effects.
        VaryingLevels Grouping(LevelSpread spread, ImmutableArray<int> all)
        {
            var g = all[0];
            var cells = data.Cells.ToLookup(c => spread.Grouping.LevelOf(c.Conditions)!.Value);
            return new(
                spread.Grouping.Varying,
                [
                    .. all.Select(one => (One: one, posterior.Spreads[one].Tau))
                        .Where(s => s.Tau is not null)
                        .Select(s => Spread(NameOf(s.One), d => d.Loadings[s.One].Tau, s.Tau!.ToString())),
                    .. spread.LogB is { } logB ? new[] { Spread("log2b", d => d.Loadings[g].LogB / Math.Log(2), logB.ToString()) } : [],
                ],
                spread.Correlation is { } prior ? Spread("correlation", d => d.Loadings[g].Correlation, prior.ToString()) : null,
                new(() => [.. spread.Grouping.Levels.Select((path, l) => Level(spread, all, l, path, SpeedCount.Of(cells[l])))])
            );
        }

        ParameterSummary Spread(string name, Func<VaryingDraw, double> value, string prior) =>
            posterior.Summary(name, value, model.Level, prior);

        string NameOf(int g) => posterior.EffectOf(g) is { } effect ? posterior.Moved.Effects[effect].Name : "tau0";

        VaryingLevel Level(
            LevelSpread spread,
            ImmutableArray<int> all,
            int l,
            ImmutableArray<string> path,
            ImmutableArray<SpeedCount> speeds
        )
        {
            var (levels, name) = (posterior.LevelsOf(Above(spread.Grouping, path)), string.Join(" · ", path));
            var sampling = posterior.SamplingOf(levels);
            ImmutableArray<ParameterSummary> effects =
            [
                .. spread.Tau is null ? [] : all.Select(g => Effect(g, NameOf(g), d => d.Shift)),
                .. spread.LogB is null ? [] : new[] { Effect(all[0], "log2b", d => d.Steepening / Math.Log(2)) },
            ];
            return new(
                path,
                speeds,
                effects,
                sampling,
                new(() => VaryingStatuses.Of(name, sampling, effects)),
                Math.Min(1, all.Average(g => posterior.Values(g, l, d => d.Open).Mean)),
                new(() =>
                    spread.Grouping.Varying.Term is { } term
                        ?
                        [
                            .. posterior
                                .With(levels, [])
                                .InStops(reference, seen, model.Level)
                                .Where(s => posterior.Moved.IsOf(term, s.Term)),
                        ]
                        : []
                ),
                () => HalfPoints(posterior.With(levels, [])),
                () => posterior.With(levels, []).At(reference).AnotherDay,
                model.Level
            );

            HalfPointMixture HalfPoints(TermPosterior curve)
            {
                lock (reading)
                    return curve.ExposureFor(setting, 0.5, tables);
            }

            ParameterSummary Effect(int g, string name, Func<LevelDraw, double> value) =>
                posterior.Summary(name, (g, l), value, model.Level, $"normal(0, sd of {name})");
        }
    }

    /// <summary>The labels of a level and of those that it lies within.</summary>
    private static Conditions Above(Grouping grouping, ImmutableArray<string> path) =>
        grouping.Varying.Path.Zip(path).Aggregate(Conditions.None, (conditions, label) => conditions.With(label.First, label.Second));
}
