using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Curves;

/// <summary>The posterior of one curve in which levels vary, as weighted points with draws of the levels beside them.</summary>
/// <param name="moved">Its terms.</param>
/// <param name="draws">The points.</param>
/// <param name="spreads">How levels vary.</param>
/// <param name="level">Block of a level, by grouping and place, and its draws; days are the grouping after the last.</param>
/// <param name="beside">Draws of the levels beside each point, one after the other.</param>
/// <param name="nodes">What more quadrature nodes would change.</param>
internal sealed class VaryingPosterior(
    WhatMoved moved,
    ImmutableArray<VaryingDraw> draws,
    ImmutableArray<LevelSpread> spreads,
    Func<int, int, (int Block, ImmutableArray<LevelDraw> Draws)> level,
    int beside,
    NodeChange nodes
)
{
    private const double Golden = 0.618033988749894848;

    internal WhatMoved Moved => moved;

    internal ImmutableArray<VaryingDraw> Draws => draws;

    internal ImmutableArray<LevelSpread> Spreads => spreads;

    /// <summary>The grouping of days.</summary>
    internal int Days => spreads.Length;

    /// <summary>Block of a level and draws of its effects.</summary>
    internal (int Block, ImmutableArray<LevelDraw> Draws) Level(int grouping, int place) => level(grouping, place);

    /// <summary>The levels that conditions name.</summary>
    internal ImmutableArray<(int Grouping, int Level)> LevelsOf(Conditions conditions) =>
        [.. spreads.SelectMany((s, g) => s.Grouping.LevelOf(conditions) is { } place ? new[] { (g, place) } : [])];

    internal TermPosterior Typical => With([], []);

    /// <summary>The curve of some levels, others drawn anew; those neither known nor fresh are typical.</summary>
    /// <param name="known">Levels by grouping and place.</param>
    /// <param name="fresh">Groupings.</param>
    internal TermPosterior With(ImmutableArray<(int Grouping, int Level)> known, ImmutableArray<int> fresh)
    {
        var weights = Weights(known);
        return new(moved, [.. Curves(known, fresh, weights)], 0) { Sampling = Sampling(weights) };
    }

    /// <summary>How well the points stand for some levels.</summary>
    internal Sampling SamplingOf(ImmutableArray<(int Grouping, int Level)> known) => Sampling(Weights(known));

    /// <summary>Weighted values of what is drawn of one level.</summary>
    internal WeightedValues Values(int grouping, int place, Func<LevelDraw, double> value) =>
        new([.. level(grouping, place).Draws.Select(value).Zip(Weights([(grouping, place)]))]);

    /// <summary>What is known of a number that each point has.</summary>
    internal ParameterSummary Summary(string name, Func<VaryingDraw, double> value, double credibility, string prior) =>
        Summary(name, [.. draws.Select(value)], [.. draws.Select(d => d.Typical.Weight)], null, credibility, prior);

    /// <summary>What is known of a number that is drawn of one level.</summary>
    internal ParameterSummary Summary(
        string name,
        (int Grouping, int Level) of,
        Func<LevelDraw, double> value,
        double credibility,
        string prior
    )
    {
        var (block, own) = level(of.Grouping, of.Level);
        return Summary(name, [.. own.Select(value)], Weights([of]), block, credibility, prior);
    }

    private ParameterSummary Summary(string name, double[] values, double[] weights, int? ownBlock, double credibility, string prior) =>
        new WeightedValues([.. values.Zip(weights)]).Summary(name, credibility, prior, nodes.Of(values, weights, ownBlock));

    /// <summary>Draws beside one point share its parameters, so they count as one.</summary>
    private Sampling Sampling(double[] weights)
    {
        double[] points = [.. weights.Chunk(beside).Select(w => w.Sum())];
        return new(points.Length, 1 / points.Sum(w => w * w), ParetoTail.Shape(points));
    }

    /// <summary>How the exposure for a rate changes from some levels under some conditions to others, point by point: what they share drops out. Levels drawn anew are the same on both sides.</summary>
    internal WeightedValues? ExposureChange(
        (ImmutableArray<(int Grouping, int Level)> Levels, Conditions Conditions) from,
        (ImmutableArray<(int Grouping, int Level)> Levels, Conditions Conditions) to,
        ImmutableArray<int> fresh,
        double rate,
        bool otherDays
    )
    {
        var weights = Weights([.. from.Levels.Union(to.Levels)]);
        return TermPosterior.ExposureChange(
            [.. Curves(from.Levels, fresh, weights).Zip(Curves(to.Levels, fresh, weights))],
            moved.Read(from.Conditions),
            moved.Read(to.Conditions),
            rate,
            otherDays
        );
    }

    /// <summary>The effect that varies by a grouping; null for half points and steepness, and for days.</summary>
    internal int? EffectOf(int grouping) => grouping < spreads.Length ? spreads[grouping].Effect : null;

    // Steps of evenly spread quantiles, another for every grouping: square roots of odd primes and one.
    private static double Apart(int grouping) => Math.Sqrt(3 + 10 * grouping) % 1;

    /// <summary>Weights of the points beside draws of some levels; they add up to one.</summary>
    internal double[] Weights(ImmutableArray<(int Grouping, int Level)> known)
    {
        double[] weights = [.. draws.Select(d => d.Typical.Weight)];
        HashSet<int> blocks = [];
        foreach (var (grouping, place) in known)
        {
            var (block, own) = level(grouping, place);
            var isFirst = blocks.Add(block);
            for (var k = 0; k < weights.Length; k++)
                weights[k] *= own[k].Own * (isFirst ? own[k].Ratio : 1);
        }

        var total = weights.Sum();
        return Array.ConvertAll(weights, w => w / total);
    }

    /// <summary>The curves of some levels; of levels drawn anew a steepness, and what terms buy them, by evenly spread quantiles, independent of the points, and beside it what the half point is then shifted by.</summary>
    internal TermDraw[] Curves(ImmutableArray<(int Grouping, int Level)> known, ImmutableArray<int> fresh, double[] weights)
    {
        ImmutableArray<LevelDraw>[] levels = [.. known.Select(k => level(k.Grouping, k.Level).Draws)];
        var curves = new TermDraw[draws.Length];
        for (var k = 0; k < curves.Length; k++)
        {
            var anew = LevelsAnew.Of([.. fresh.Where(g => EffectOf(g) is null)], draws[k].Loadings);
            var (shift, steepening) = anew.At(anew.LogB == 0 ? 0 : Normal.Quantile((k + 0.5) * Golden % 1));
            var effects = draws[k].Typical.Effects.ToArray();
            foreach (var g in fresh)
                if (EffectOf(g) is { } effect)
                    effects[effect] += draws[k].Loadings[g].Tau * Normal.Quantile((k + 0.5) * Apart(g) % 1);
            for (var i = 0; i < levels.Length; i++)
                if (EffectOf(known[i].Grouping) is { } effect)
                    effects[effect] += levels[i][k].Shift;
                else
                    (shift, steepening) = (shift + levels[i][k].Shift, steepening + levels[i][k].Steepening);
            curves[k] = draws[k].Typical with
            {
                Effects = [.. effects],
                Weight = weights[k],
                Shift = shift,
                ShiftSd = anew.ShiftSd,
                LogSteepness = draws[k].Typical.LogSteepness + steepening,
            };
        }

        return curves;
    }
}
