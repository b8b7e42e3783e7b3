using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>Log posterior density of one curve with terms, in coordinates whose prior is standard normal.</summary>
/// <remarks>
/// Coordinates in turn: tau0, log steepness, ceiling and floor where estimated, the effects, and with luck its two sds and the luck of every session in
/// units of its sd. A bounded parameter is the quantile of its prior at Φ(coordinate). The data fix tau0 plus the luck of the tested sessions better than
/// either, so the coordinate of tau0 is that sum. Where translation of the hands counts, the data fix what rotation and translation make together: the two
/// coordinates are then that half point T under the closest setting and the stops r by which translation allows more than rotation,
/// tau_rot = T + 1/2 log2(1 + 2^(-2r)), tau_trans = tau_rot + r, a change of variables that keeps volumes. A burst's luck is integrated by Gauss-Hermite
/// quadrature.
/// </remarks>
internal sealed partial class TermDensity
{
    /// <summary>Place of the ceiling among the coordinates, where it is estimated.</summary>
    internal const int CeilingPlace = 2;

    private const int FewNodes = 7;
    private const int Stacked = 1024;
    private const double CombinedSd = 2; // stops: scales of two coordinates, no priors
    private const double RatioSd = 2.2;
    private readonly KeeperModel _model;
    private readonly WhatMoved _moved;
    private readonly TermObservations _data;
    private readonly GaussRule _burst;
    private readonly LossTable? _loss;
    private readonly LossTable? _floor;
    private readonly int _luck;
    private readonly Setting? _closest;
    private readonly (double Combined, double Ratio) _start;

    internal TermDensity(KeeperModel model, WhatMoved moved, TermObservations data)
        : this(
            model,
            moved,
            data,
            GaussRule.Hermite(FewNodes + 2 * (int)Math.Sqrt(Math.Max(0, data.LargestBurst - 4))),
            model.Ceiling.Value is null ? new(model.Priors.CeilingLoss) : null,
            model.Floor.Value is null ? new(model.Priors.Floor) : null
        ) { }

    private TermDensity(KeeperModel model, WhatMoved moved, TermObservations data, GaussRule burst, LossTable? loss, LossTable? floor)
    {
        (_model, _moved, _data, _burst, _loss, _floor) = (model, moved, data, burst, loss, floor);
        FirstEffect = 2 + (model.Ceiling.Value is null ? 1 : 0) + (model.Floor.Value is null ? 1 : 0);
        _luck = FirstEffect + moved.Effects.Length;
        Dimension = _luck + (HasLuck ? 2 + data.Sessions.Length : 0);
        _closest = data.Settings.Where(s => s.Translation is not null).MinBy(s => s.Translation);
        if (_closest is null)
            return;
        double[] means = [.. moved.Effects.Select(e => e.Prior.Mean)];
        var rotation = moved.Tau0.Mean + Setting.Sum(_closest.Turning, means);
        var ratio = _closest.Translation!.Value - means[_closest.HandSpeed] - rotation;
        _start = (rotation - FromCombined(ratio), ratio);
    }

    /// <summary>The same of fewer frames of the same settings and sessions.</summary>
    internal TermDensity Of(TermObservations frames) => new(_model, _moved, frames, _burst, _loss, _floor);

    internal int Dimension { get; }

    /// <summary>Place of the first effect among the coordinates.</summary>
    internal int FirstEffect { get; }

    internal bool HasLuck => _model.Luck == LuckKind.Normal;

    internal int Sessions => _data.Sessions.Length;

    /// <summary>The parameters at a point; effects are written to <paramref name="effects"/>.</summary>
    internal TermPoint Read(ReadOnlySpan<double> z, Span<double> effects)
    {
        var priors = _model.Priors;
        var place = 2;
        var ceiling = _model.Ceiling.Value ?? 1 - _loss!.At(z[place++]);
        var floor = _model.Floor.Value ?? _floor!.At(z[place++]);
        for (var j = 0; j < effects.Length; j++)
            effects[j] = _moved.Effects[j].Prior.Mean + _moved.Effects[j].Prior.StandardDeviation * z[place++];
        var (session, burst) = HasLuck ? (Sd(priors.SessionLuck, z[_luck]), Sd(priors.BurstLuck, z[_luck + 1])) : (0.0, 0.0);
        var luck = HasLuck ? session * Mean(z[(_luck + 2)..]) : 0;
        double tau0;
        if (_closest is null)
            tau0 = _moved.Tau0.Mean + _moved.Tau0.StandardDeviation * z[0] - luck;
        else
        {
            var ratio = _start.Ratio + RatioSd * z[FirstEffect + _closest.HandSpeed];
            var rotation = _start.Combined + CombinedSd * z[0] - luck + FromCombined(ratio);
            effects[_closest.HandSpeed] = _closest.Translation!.Value - rotation - ratio;
            tau0 = rotation - Setting.Sum(_closest.Turning, effects);
        }

        return new(tau0, Math.Log(priors.Steepness.Median) + priors.Steepness.LogStandardDeviation * z[1], ceiling, floor, session, burst);
    }

    /// <summary>A session's luck at a point, stops.</summary>
    internal double Session(ReadOnlySpan<double> z, TermPoint point, int session) => HasLuck ? point.SessionSd * z[_luck + 2 + session] : 0;

    /// <summary>Log prior plus log-likelihood (Bernoulli scale), without the constant of 2π.</summary>
    internal double Log(ReadOnlySpan<double> z)
    {
        Span<double> effects = stackalloc double[_moved.Effects.Length];
        var point = Read(z, effects);
        if (!(point.Ceiling > point.Floor))
            return double.NegativeInfinity;
        var tau0 = (point.Tau0 - _moved.Tau0.Mean) / _moved.Tau0.StandardDeviation;
        var log = -0.5 * tau0 * tau0;
        var hand = _closest is null ? -1 : FirstEffect + _closest.HandSpeed;
        for (var j = 1; j < z.Length; j++)
            if (j != hand)
                log -= 0.5 * z[j] * z[j];
        if (_closest is not null)
        {
            var prior = _moved.Effects[_closest.HandSpeed].Prior;
            var speed = (effects[_closest.HandSpeed] - prior.Mean) / prior.StandardDeviation;
            log += Math.Log(CombinedSd * RatioSd / (_moved.Tau0.StandardDeviation * prior.StandardDeviation)) - 0.5 * speed * speed;
        }

        log += LogLikelihood(z, Called(point), effects, _data);
        return double.IsNaN(log) ? double.NegativeInfinity : log;
    }

    /// <summary>Log-likelihood (Bernoulli scale) at a point of frames of the same settings and sessions.</summary>
    internal double LogLikelihood(ReadOnlySpan<double> z, TermObservations frames)
    {
        Span<double> effects = stackalloc double[_moved.Effects.Length];
        return LogLikelihood(z, Called(Read(z, effects)), effects, frames);
    }

    private double LogLikelihood(ReadOnlySpan<double> z, TermPoint point, ReadOnlySpan<double> effects, TermObservations frames)
    {
        var room = TermCurves.Room(_data.Settings, _burst);
        TermCurves curves = new(point, effects, _data.Settings, _burst, room <= Stacked ? stackalloc double[room] : new double[room]);
        var log = 0.0;
        for (var s = 0; s < frames.Sessions.Length; s++)
        {
            var luck = Session(z, point, s);
            var (bursts, afresh) = frames.Sessions[s];
            foreach (var burst in bursts)
                log += curves.Log(burst.Cells, luck);
            foreach (var cell in afresh)
                log += curves.LogAfresh(cell, luck);
        }

        return log;
    }

    /// <summary>A point as the judge's calls see it.</summary>
    private TermPoint Called(TermPoint point) =>
        point with
        {
            Ceiling = _model.Judging.Called(point.Ceiling),
            Floor = _model.Judging.Called(point.Floor),
        };

    /// <summary>Stops by which rotation alone allows more than rotation and translation together.</summary>
    private static double FromCombined(double ratio) => 0.5 * Math.Log2(1 + Math.Pow(2, -2 * ratio));

    internal static double Sd(HalfNormalPrior prior, double z) => -prior.Scale * Normal.Quantile(0.5 * Normal.Cdf(-z));

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        return values.IsEmpty ? 0 : sum / values.Length;
    }
}
