using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>What the curves of every setting, shifted and steepened for a level, give to its frames, with derivatives, at eight places at once.</summary>
internal sealed partial class LevelCurves
{
    private readonly TermPoint _point;
    private readonly double[] _effects;
    private readonly GaussRule _burst;
    private readonly double _span;
    private readonly double[] _halfPoints;
    private readonly double[] _steepness;

    /// <param name="point">The parameters, ceiling and floor as the judge's calls see them.</param>
    /// <param name="effects">The terms' effects.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="burst">The rule for a burst's luck.</param>
    internal LevelCurves(TermPoint point, double[] effects, ImmutableArray<Setting> settings, GaussRule burst)
    {
        (_point, _effects, _burst, _span) = (point, effects, burst, point.Ceiling - point.Floor);
        (_halfPoints, _steepness) = (new double[settings.Length], new double[settings.Length]);
        for (var i = 0; i < settings.Length; i++)
        {
            _halfPoints[i] = settings[i].HalfPoint(point.Tau0, effects);
            _steepness[i] = Math.Exp(point.LogSteepness + settings[i].Steeper(effects));
        }
    }

    /// <summary>The shift of the half point where the rotation allows so many stops more.</summary>
    internal double Turned(Setting motion, double stops) =>
        motion.HalfPoint(_point.Tau0 + stops, _effects) - motion.HalfPoint(_point.Tau0, _effects);

    /// <summary>Of all that blurs, the share of the rotation there.</summary>
    internal double RotationShare(Setting motion, double stops) => motion.RotationShare(_point.Tau0 + stops, _effects);

    /// <summary>Adds the frames of a part, whose half points are shifted by <paramref name="shift"/> stops and steepness multiplied by exp(<paramref name="steepening"/>).</summary>
    internal void Add(LevelPart part, Vector512<double> shift, Vector512<double> steepening, ref LevelSlopes sum)
    {
        Place place = new(this, shift, Vector512.Exp(steepening), stackalloc Vector512<double>[_burst.Nodes.Length]);
        foreach (var cell in part.Afresh)
            Afresh(cell, ref place, ref sum);
        foreach (var burst in part.Bursts)
            Burst(burst.Cells, ref place, ref sum);
    }

    /// <summary>Frames each with a luck of its own: keeper and reject by the curve averaged over it.</summary>
    private void Afresh(TermCell cell, ref Place place, ref LevelSlopes sum)
    {
        place.Go(cell);
        var (keep, miss) = (Vector512<double>.Zero, Vector512<double>.Zero);
        LevelSlopes mean = default;
        for (var k = 0; k < _burst.Nodes.Length; k++)
        {
            var (mu, oneMinusMu, eta) = place.At(k);
            var weight = _burst.Weights[k];
            var rise = mu * oneMinusMu * weight;
            keep += mu * weight;
            miss += oneMinusMu * weight;
            mean.Add(place.Steepness, eta, rise, rise * (oneMinusMu - mu));
        }

        if (cell.Keepers > 0)
            sum.AddLog(cell.Keepers, Kept(keep), _span, mean);
        if (cell.Frames > cell.Keepers)
            sum.AddLog(cell.Frames - cell.Keepers, Missed(miss), -_span, mean);
    }

    /// <summary>Frames that share a luck, which is integrated; derivatives by those of the integrand (Louis 1982).</summary>
    private void Burst(ImmutableArray<TermCell> cells, ref Place place, ref LevelSlopes sum)
    {
        Span<LevelSlopes> nodes = stackalloc LevelSlopes[_burst.Nodes.Length];
        Span<Vector512<double>> chances = stackalloc Vector512<double>[_burst.Nodes.Length];
        for (var k = 0; k < nodes.Length; k++)
            (nodes[k], chances[k]) = (default, Vector512.Create(_burst.Weights[k]));
        foreach (var cell in cells)
        {
            place.Go(cell);
            for (var k = 0; k < nodes.Length; k++)
                Frames(cell, place.Steepness, place.At(k), ref chances[k], ref nodes[k]);
        }

        var (top, total) = (Vector512<double>.Zero, Total(chances));
        if (Vector512.LessThanAny(total, Vector512.Create(TermCurves.Vanishing)))
            (top, total) = (Enlarge(cells, ref place, chances), Total(chances));
        LevelSlopes all = default;
        for (var k = 0; k < nodes.Length; k++)
            all.AddShare(chances[k], nodes[k]);
        all.Integrated(top, total);
        sum.Add(all);
    }

    private static Vector512<double> Total(ReadOnlySpan<Vector512<double>> chances)
    {
        var total = Vector512<double>.Zero;
        foreach (var chance in chances)
            total += chance;
        return total;
    }

    /// <summary>Frames of one chance: their chance by multiplication, slopes of its logarithm by addition.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Frames(
        TermCell cell,
        Vector512<double> steepness,
        (Vector512<double> Mu, Vector512<double> OneMinusMu, Vector512<double> Eta) at,
        ref Vector512<double> chance,
        ref LevelSlopes sum
    )
    {
        var rise = at.Mu * at.OneMinusMu * _span;
        var bend = at.OneMinusMu - at.Mu;
        var (first, second) = (Vector512<double>.Zero, Vector512<double>.Zero);
        if (cell.Keepers > 0)
        {
            var keep = Kept(at.Mu);
            var share = rise / keep;
            chance *= Elementary.Power(keep, cell.Keepers);
            first += share * cell.Keepers;
            second += share * (bend - share) * cell.Keepers;
        }

        if (cell.Frames > cell.Keepers)
        {
            var (miss, lost) = (Missed(at.OneMinusMu), cell.Frames - cell.Keepers);
            var share = rise / miss;
            chance *= Elementary.Power(miss, lost);
            first -= share * lost;
            second -= share * (bend + share) * lost;
        }

        sum.Add(steepness, at.Eta, first, second);
    }

    /// <summary>Chances at the nodes that are too small for numbers, as multiples of the greatest; returns its logarithm.</summary>
    private Vector512<double> Enlarge(ImmutableArray<TermCell> cells, ref Place place, scoped Span<Vector512<double>> chances)
    {
        for (var k = 0; k < chances.Length; k++)
            chances[k] = Vector512.Create(Math.Log(_burst.Weights[k]));
        foreach (var cell in cells)
        {
            place.Go(cell);
            for (var k = 0; k < chances.Length; k++)
            {
                var (mu, oneMinusMu, _) = place.At(k);
                if (cell.Keepers > 0)
                    chances[k] += Vector512.Log(Kept(mu)) * cell.Keepers;
                if (cell.Frames > cell.Keepers)
                    chances[k] += Vector512.Log(Missed(oneMinusMu)) * (cell.Frames - cell.Keepers);
            }
        }

        var top = chances[0];
        foreach (var chance in chances)
            top = Vector512.Max(top, chance);
        foreach (ref var chance in chances)
            chance = Vector512.Exp(chance - top);
        return top;
    }

    private Vector512<double> Kept(Vector512<double> mu) => mu * _span + Vector512.Create(_point.Floor);

    private Vector512<double> Missed(Vector512<double> oneMinusMu) => oneMinusMu * _span + Vector512.Create(1 - _point.Ceiling);

    /// <summary>The curve of the frames at hand at the nodes of their luck.</summary>
    private ref struct Place(LevelCurves curves, Vector512<double> shift, Vector512<double> times, Span<Vector512<double>> luck)
    {
        private const double Farthest = 500; // farther out a chance would be no number any more; nothing there counts
        private const double FarthestLuck = 200;
        private readonly Span<Vector512<double>> _luck = luck;
        private double _typical = double.NaN; // steepness, before what is multiplied
        private Vector512<double> _eta;
        private Vector512<double> _odds;

        internal Vector512<double> Steepness { get; private set; }

        internal void Go(TermCell cell)
        {
            var steepness = curves._steepness[cell.Setting];
            if (steepness != _typical)
            {
                (_typical, Steepness) = (steepness, times * steepness);
                for (var k = 0; k < _luck.Length; k++)
                    _luck[k] = Vector512.Exp(-Within(Steepness * (curves._point.BurstSd * curves._burst.Nodes[k]), FarthestLuck));
            }

            _eta = Within(Steepness * (shift + Vector512.Create(curves._halfPoints[cell.Setting] - cell.Exposure)), Farthest);
            _odds = Vector512.Exp(-_eta);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal readonly (Vector512<double> Mu, Vector512<double> OneMinusMu, Vector512<double> Eta) At(int node)
        {
            var odds = _odds * _luck[node];
            var mu = Vector512<double>.One / (Vector512<double>.One + odds);
            return (mu, odds * mu, _eta + Steepness * (curves._point.BurstSd * curves._burst.Nodes[node]));
        }

        private static Vector512<double> Within(Vector512<double> value, double most) =>
            Vector512.Min(Vector512.Max(value, Vector512.Create(-most)), Vector512.Create(most));
    }
}
