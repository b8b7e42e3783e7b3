using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Curves;

/// <summary>The posterior of one curve with terms, as weighted points: what it says depends on the conditions asked.</summary>
internal sealed partial class TermPosterior
{
    private const double Negligible = 1e-9;
    private const double LuckStep = 0.02; // logits: curves averaged over a burst's luck are tabulated at these
    private const double Sharpest = 0.005; // stops: a point is drawn this wide, so that distributions are smooth
    private const double Golden = 0.618033988749894848;
    private readonly ImmutableArray<TermDraw> _draws;

    internal TermPosterior(WhatMoved moved, ImmutableArray<TermDraw> draws, int sessions)
    {
        Moved = moved;
        Sessions = sessions;
        _draws = [.. draws.Where(d => d.Weight > Negligible)];
    }

    internal WhatMoved Moved { get; }

    /// <summary>The points that matter.</summary>
    internal ImmutableArray<TermDraw> Draws => _draws;

    /// <summary>How well the points stand for it; null where that is said elsewhere.</summary>
    internal Sampling? Sampling { get; init; }

    private int Sessions { get; }

    /// <summary>The curve under conditions; where the place in the burst is not said, that of the later frames, with the first one's shift beside it.</summary>
    /// <exception cref="ConditionsException">The conditions lack a term, or have a level that no frame had.</exception>
    internal CurvePosterior At(Conditions conditions)
    {
        var setting = Moved.Read(conditions);
        var first = Moved.HasFirstFrame && conditions.BurstPosition is null ? Moved.Read(conditions with { BurstPosition = 1 }) : setting;
        return new(
            Atoms(setting, first, (draw, tau) => new(tau, Math.Max(draw.ShiftSd, Sharpest))),
            Atoms(setting, first, (draw, tau) => new(tau, Math.Max(double.Hypot(draw.SessionSd, draw.ShiftSd), Sharpest))),
            Sessions == 1 ? Atoms(setting, first, (draw, tau) => new(tau + draw.Days[0], Sharpest)) : [],
            AsymptoteCells.None,
            AsymptoteCells.None
        );
    }

    /// <summary>The curve under conditions on one of the tested days.</summary>
    /// <exception cref="ConditionsException">The conditions lack a term, or have a level that no frame had.</exception>
    internal RateLaw On(int day, Conditions conditions)
    {
        var setting = Moved.Read(conditions);
        return new(Atoms(setting, setting, (draw, tau) => new(tau + draw.Days[day], Sharpest)), AsymptoteCells.None, AsymptoteCells.None);
    }

    /// <summary>Conditions to report at: typical ones, the place in the burst left open.</summary>
    internal Conditions Reference(ImmutableArray<FrameCell> cells) => CurveData.Typical(cells, Moved.Terms, Moved.FromReference);

    /// <summary>Weighted values of something, ascending, as a distribution: mean, sd, and the value at a cumulative weight.</summary>
    internal WeightedValues Values(Func<TermDraw, double> value) => new([.. _draws.Select(d => (value(d), d.Weight))]);

    /// <summary>Weighted values of the half point's change between two conditions.</summary>
    internal WeightedValues Change(Conditions from, Conditions to)
    {
        var (a, b) = (Moved.Read(from), Moved.Read(to));
        return Values(d => b.HalfPoint(d.Tau0, d.Effects.AsSpan()) - a.HalfPoint(d.Tau0, d.Effects.AsSpan()));
    }

    /// <summary>Weighted values of the change between two conditions of the exposure that has a rate; null where the rate may be out of reach.</summary>
    /// <param name="from">One side.</param>
    /// <param name="to">The other.</param>
    /// <param name="rate">The rate.</param>
    /// <param name="otherDays">Whether each side has a day of its own, with luck of its own.</param>
    internal WeightedValues? ExposureChange(Conditions from, Conditions to, double rate, bool otherDays) =>
        ExposureChange([.. _draws.Select(d => (d, d))], Moved.Read(from), Moved.Read(to), rate, otherDays);

    /// <summary>The same between the two curves of every point.</summary>
    internal static WeightedValues? ExposureChange(
        (TermDraw Before, TermDraw After)[] draws,
        Setting before,
        Setting after,
        double rate,
        bool otherDays
    )
    {
        if (draws.Sum(d => IsBetween(d.Before) ? d.Before.Weight : 0) < 0.95)
            return null;
        var tables = new Dictionary<double, BurstCurve>();
        return new([
            .. draws
                .Where(d => IsBetween(d.Before))
                .Select(
                    (d, k) =>
                        (
                            Exposure(d.After, after, rate, tables) - Exposure(d.Before, before, rate, tables) + Days(d.Before, k),
                            d.Before.Weight
                        )
                ),
        ]);

        bool IsBetween(TermDraw draw) => rate > draw.Floor && rate < draw.Ceiling;

        // Evenly spread quantiles: the luck of two days, independent of the points.
        double Days(TermDraw draw, int k) => otherDays ? Math.Sqrt(2) * draw.SessionSd * Normal.Quantile((k + 0.5) * Golden % 1) : 0;
    }

    /// <summary>The exposures, log2 seconds, that have a rate on another day; minus infinity where the rate is above the ceiling, infinity below the floor.</summary>
    internal HalfPointMixture ExposureFor(Setting setting, double rate, Dictionary<double, BurstCurve> tables) =>
        new([
            .. _draws.Select(d => new MixturePart(
                d.Weight,
                new NormalHalfPoint(0, Math.Max(double.Hypot(d.SessionSd, d.ShiftSd), Sharpest)),
                AskedExposure(d, setting, rate, tables)
            )),
        ]);

    /// <summary>The exposure, log2 seconds, that has a rate at a point whose ceiling is above it and floor below.</summary>
    internal static double Exposure(TermDraw draw, Setting setting, double rate, Dictionary<double, BurstCurve> tables)
    {
        var (tau, b, luck) = Curve(draw, setting);
        if (!tables.TryGetValue(luck, out var table))
            tables[luck] = table = new(luck);
        var share = (rate - draw.Floor) / (draw.Ceiling - draw.Floor);
        return tau - table.Inverse(Elementary.Logit(share)) / b;
    }

    /// <summary>The same at any point: minus infinity where the rate is above the ceiling, infinity below the floor.</summary>
    internal static double AskedExposure(TermDraw draw, Setting setting, double rate, Dictionary<double, BurstCurve> tables) =>
        rate >= draw.Ceiling ? double.NegativeInfinity
        : rate <= draw.Floor ? double.PositiveInfinity
        : Exposure(draw, setting, rate, tables);

    private ImmutableArray<CurveAtom> Atoms(Setting setting, Setting first, Func<TermDraw, double, NormalHalfPoint> halfPoint)
    {
        var atoms = ImmutableArray.CreateBuilder<CurveAtom>(_draws.Length);
        foreach (var draw in _draws)
        {
            var (tau, b, luck) = Curve(draw, setting);
            var shift = first.HalfPoint(draw.Tau0, draw.Effects.AsSpan()) + draw.Shift - tau;
            atoms.Add(new(draw.Weight, b, draw.Ceiling, draw.Floor, luck / b, halfPoint(draw, tau), shift));
        }

        return atoms.MoveToImmutable();
    }

    /// <summary>Half point, steepness, and a burst's luck in logits, of one point under a setting.</summary>
    private static (double HalfPoint, double Steepness, double Luck) Curve(TermDraw draw, Setting setting)
    {
        var effects = draw.Effects.AsSpan();
        var b = Math.Exp(draw.LogSteepness + setting.Steeper(effects));
        return (setting.HalfPoint(draw.Tau0, effects) + draw.Shift, b, Math.Round(b * draw.BurstSd / LuckStep) * LuckStep);
    }
}
