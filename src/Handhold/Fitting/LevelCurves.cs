using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>What the curves of every setting, shifted and steepened for a level, give to its frames, with derivatives.</summary>
internal sealed class LevelCurves
{
    private const double Farthest = 500;
    private readonly TermPoint _point;
    private readonly GaussRule _burst;
    private readonly double _span;
    private readonly double[] _halfPoints;
    private readonly double[] _steepness;

    /// <param name="point">The parameters, ceiling and floor as the judge's calls see them.</param>
    /// <param name="effects">The terms' effects.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="burst">The rule for a burst's luck.</param>
    internal LevelCurves(TermPoint point, ReadOnlySpan<double> effects, ImmutableArray<Setting> settings, GaussRule burst)
    {
        (_point, _burst, _span) = (point, burst, point.Ceiling - point.Floor);
        (_halfPoints, _steepness) = (new double[settings.Length], new double[settings.Length]);
        for (var i = 0; i < settings.Length; i++)
        {
            _halfPoints[i] = settings[i].HalfPoint(point.Tau0, effects);
            _steepness[i] = Math.Exp(point.LogSteepness + settings[i].Steeper(effects));
        }
    }

    /// <summary>The frames of a part, whose half points are shifted by <paramref name="shift"/> stops and steepness multiplied by exp(<paramref name="steepening"/>).</summary>
    internal LevelSlopes Of(LevelPart part, double shift, double steepening)
    {
        LevelSlopes sum = default;
        var times = Math.Exp(steepening);
        if (!part.Afresh.IsEmpty)
            Afresh(part.Afresh, shift, times, ref sum);
        foreach (var burst in part.Bursts)
            sum.Add(Burst(burst.Cells, shift, times));
        return sum;
    }

    /// <summary>Farther out a chance would be no number any more; nothing there counts.</summary>
    private static double Within(double eta) => Math.Clamp(eta, -Farthest, Farthest);

    /// <summary>Frames each with a luck of its own: keeper and reject by the curve averaged over it.</summary>
    private void Afresh(ImmutableArray<TermCell> cells, double shift, double times, ref LevelSlopes sum)
    {
        Span<double> luck = stackalloc double[_burst.Nodes.Length];
        var (setting, steepness, halfPoint) = (-1, 0.0, 0.0);
        foreach (var cell in cells)
        {
            if (cell.Setting != setting)
            {
                setting = cell.Setting;
                (steepness, halfPoint) = (times * _steepness[setting], _halfPoints[setting] + shift);
                for (var k = 0; k < luck.Length; k++)
                    luck[k] = Math.Exp(-steepness * _point.BurstSd * _burst.Nodes[k]);
            }

            var eta = Within(steepness * (halfPoint - cell.Exposure));
            if (_point.BurstSd == 0)
            {
                Add(cell, steepness, eta, ref sum);
                continue;
            }

            var odds = Math.Exp(-eta);
            var (keep, miss) = (0.0, 0.0);
            LevelSlopes mean = default;
            for (var k = 0; k < luck.Length; k++)
            {
                var (mu, oneMinusMu) = Elementary.AgainstOdds(odds * luck[k]);
                var weight = _burst.Weights[k];
                var rise = weight * mu * oneMinusMu;
                keep += weight * mu;
                miss += weight * oneMinusMu;
                mean.Add(steepness, eta + steepness * _point.BurstSd * _burst.Nodes[k], rise, rise * (oneMinusMu - mu));
            }

            keep = _point.Floor + _span * keep;
            miss = 1 - _point.Ceiling + _span * miss;
            if (cell.Keepers > 0)
                Chance(cell.Keepers, keep, _span, mean, ref sum);
            if (cell.Frames > cell.Keepers)
                Chance(cell.Frames - cell.Keepers, miss, -_span, mean, ref sum);
        }
    }

    /// <summary>Adds times the logarithm of a chance whose derivatives are those of a mean, scaled.</summary>
    private static void Chance(int times, double chance, double scale, in LevelSlopes mean, ref LevelSlopes sum)
    {
        var by = scale / chance;
        var (t, l) = (by * mean.T, by * mean.L);
        sum.Value += times * Math.Log(chance);
        sum.T += times * t;
        sum.L += times * l;
        sum.TT += times * (by * mean.TT - t * t);
        sum.TL += times * (by * mean.TL - t * l);
        sum.LL += times * (by * mean.LL - l * l);
    }

    /// <summary>Frames of one chance.</summary>
    private void Add(TermCell cell, double steepness, double eta, ref LevelSlopes sum)
    {
        var (mu, oneMinusMu) = Elementary.Logistic(eta);
        var (keep, miss) = (_point.Floor + _span * mu, 1 - _point.Ceiling + _span * oneMinusMu);
        var rise = _span * mu * oneMinusMu;
        var (bend, first, second) = (rise * (oneMinusMu - mu), 0.0, 0.0);
        if (cell.Keepers > 0)
        {
            sum.Value += cell.Keepers * Math.Log(keep);
            first += cell.Keepers * (rise / keep);
            second += cell.Keepers * (bend / keep - rise / keep * (rise / keep));
        }

        if (cell.Frames > cell.Keepers)
        {
            var lost = cell.Frames - cell.Keepers;
            sum.Value += lost * Math.Log(miss);
            first -= lost * (rise / miss);
            second -= lost * (bend / miss + rise / miss * (rise / miss));
        }

        sum.Add(steepness, eta, first, second);
    }

    /// <summary>Frames that share a luck, which is integrated; derivatives by those of the integrand (Louis 1982).</summary>
    private LevelSlopes Burst(ImmutableArray<TermCell> cells, double shift, double times)
    {
        Span<LevelSlopes> nodes = stackalloc LevelSlopes[_burst.Nodes.Length];
        var top = double.NegativeInfinity;
        for (var k = 0; k < nodes.Length; k++)
        {
            LevelSlopes node = default;
            node.Value = Math.Log(_burst.Weights[k]);
            foreach (var cell in cells)
            {
                var steepness = times * _steepness[cell.Setting];
                var eta = Within(steepness * (_halfPoints[cell.Setting] + shift + _point.BurstSd * _burst.Nodes[k] - cell.Exposure));
                Add(cell, steepness, eta, ref node);
            }

            nodes[k] = node;
            top = Math.Max(top, node.Value);
        }

        LevelSlopes sum = default;
        var total = 0.0;
        foreach (var node in nodes)
            total += Math.Exp(node.Value - top);
        foreach (var node in nodes)
        {
            var share = Math.Exp(node.Value - top) / total;
            sum.T += share * node.T;
            sum.L += share * node.L;
            sum.TT += share * (node.TT + node.T * node.T);
            sum.TL += share * (node.TL + node.T * node.L);
            sum.LL += share * (node.LL + node.L * node.L);
        }

        sum.Value = top + Math.Log(total);
        sum.TT -= sum.T * sum.T;
        sum.TL -= sum.T * sum.L;
        sum.LL -= sum.L * sum.L;
        return sum;
    }
}
