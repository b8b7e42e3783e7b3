using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Curves;

/// <summary>The posterior of one curve in which levels vary, as weighted points with draws of the levels beside them.</summary>
/// <param name="moved">Its terms.</param>
/// <param name="draws">The points.</param>
/// <param name="spreads">How levels vary.</param>
/// <param name="level">Block of a level, by grouping and place, and its draws; days are the grouping after the last.</param>
internal sealed class VaryingPosterior(
    WhatMoved moved,
    ImmutableArray<VaryingDraw> draws,
    ImmutableArray<LevelSpread> spreads,
    Func<int, int, (int Block, ImmutableArray<LevelDraw> Draws)> level
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

    /// <summary>The same points, weighed again.</summary>
    internal VaryingPosterior Weighed(Func<VaryingDraw, double> ratio)
    {
        var ratios = draws.Select(d => d.Typical.Weight * ratio(d)).ToArray();
        var total = ratios.Sum();
        return new(moved, [.. draws.Select((d, k) => d with { Typical = d.Typical with { Weight = ratios[k] / total } })], spreads, level);
    }

    /// <summary>The curve of some levels, others drawn anew; those neither known nor fresh are typical.</summary>
    /// <param name="known">Levels by grouping and place.</param>
    /// <param name="fresh">Groupings.</param>
    internal TermPosterior With(ImmutableArray<(int Grouping, int Level)> known, ImmutableArray<int> fresh)
    {
        var weighted = new TermDraw[draws.Length];
        var levels = known.Select(k => level(k.Grouping, k.Level)).ToArray();
        var blocks = levels.GroupBy(l => l.Block).Select(g => g.First().Draws).ToArray();
        for (var k = 0; k < draws.Length; k++)
        {
            var draw = draws[k].Typical;
            var (weight, shift, steepening) = (draw.Weight, 0.0, 0.0);
            foreach (var block in blocks)
                weight *= block[k].Ratio;
            foreach (var (_, own) in levels)
            {
                weight *= own[k].Own;
                shift += own[k].Shift;
                steepening += own[k].Steepening;
            }

            var (mean, sd, steeper) = Anew(fresh, draws[k].Loadings, k);
            weighted[k] = draw with
            {
                Weight = weight,
                Shift = shift + mean,
                ShiftSd = sd,
                LogSteepness = draw.LogSteepness + steepening + steeper,
            };
        }

        double[] weights = [.. weighted.Select(d => d.Weight)];
        var total = weights.Sum();
        return new(moved, [.. weighted.Select(d => d with { Weight = d.Weight / total })], 0)
        {
            Sampling = new(weights.Length, total * total / weights.Sum(w => w * w), ParetoTail.Shape(weights)),
        };
    }

    /// <summary>Levels drawn anew: a steepness by evenly spread quantiles, independent of the points, and beside it what the half point is then shifted by.</summary>
    private static (double Mean, double Sd, double Steepening) Anew(ImmutableArray<int> fresh, ImmutableArray<LevelLoading> loadings, int k)
    {
        var (tau, steep, both) = (0.0, 0.0, 0.0);
        foreach (var g in fresh)
        {
            tau += loadings[g].Tau * loadings[g].Tau;
            steep += loadings[g].LogB * loadings[g].LogB;
            both += loadings[g].Tau * loadings[g].Steep0;
        }

        if (steep == 0)
            return (0, Math.Sqrt(tau), 0);
        var deviate = Normal.Quantile((k + 0.5) * Golden % 1);
        return (both / Math.Sqrt(steep) * deviate, Math.Sqrt(Math.Max(0, tau - both * both / steep)), Math.Sqrt(steep) * deviate);
    }
}
