using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>What is known of each level, and of how levels spread.</summary>
internal static class VaryingSummaries
{
    internal static ImmutableArray<VaryingLevels> Of(KeeperModel model, CurveData data, VaryingPosterior posterior, Conditions reference)
    {
        var (setting, tables) = (posterior.Moved.Read(reference), new Dictionary<double, BurstCurve>());
        return [.. posterior.Spreads.Select((spread, g) => Grouping(spread, g))];

        VaryingLevels Grouping(LevelSpread spread, int g)
        {
            var frames = new int[spread.Grouping.Levels.Length];
            foreach (var cell in data.Cells)
                frames[spread.Grouping.LevelOf(cell.Conditions)!.Value] += cell.Frames;
            return new(
                spread.Grouping.Varying,
                [
                    .. spread.Tau is { } tau ? new[] { Spread("tau0", d => d.Loadings[g].Tau, tau.ToString()) } : [],
                    .. spread.LogB is { } logB ? new[] { Spread("log2b", d => d.Loadings[g].LogB / Math.Log(2), logB.ToString()) } : [],
                ],
                spread.Correlation is { } prior ? Spread("correlation", d => d.Loadings[g].Correlation, prior.ToString()) : null,
                [.. spread.Grouping.Levels.Select((path, l) => Level(spread, g, l, path, frames[l]))]
            );
        }

        ParameterSummary Spread(string name, Func<VaryingDraw, double> value, string prior) =>
            new WeightedValues([.. posterior.Draws.Select(d => (value(d), d.Typical.Weight))]).Summary(name, model.Level, prior);

        VaryingLevel Level(LevelSpread spread, int g, int l, ImmutableArray<string> path, int frames)
        {
            var (_, draws) = posterior.Level(g, l);
            return new(
                path,
                frames,
                [
                    .. spread.Tau is null ? [] : new[] { Effect("tau0", d => d.Shift) },
                    .. spread.LogB is null ? [] : new[] { Effect("log2b", d => d.Steepening / Math.Log(2)) },
                ],
                Math.Min(1, Values(d => d.Open).Mean),
                posterior.With(posterior.LevelsOf(Above(spread.Grouping, path)), []).ExposureFor(setting, 0.5, tables),
                model.Level
            );

            ParameterSummary Effect(string name, Func<LevelDraw, double> value) =>
                Values(value).Summary(name, model.Level, $"normal(0, sd of {name})");

            WeightedValues Values(Func<LevelDraw, double> value) =>
                new([.. draws.Select((d, k) => (value(d), posterior.Draws[k].Typical.Weight * d.Ratio * d.Own))]);
        }
    }

    /// <summary>The labels of a level and of those that it lies within.</summary>
    private static Conditions Above(Grouping grouping, ImmutableArray<string> path) =>
        grouping.Varying.Path.Zip(path).Aggregate(Conditions.None, (conditions, label) => conditions.With(label.First, label.Second));
}
