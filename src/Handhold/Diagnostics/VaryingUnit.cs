using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Fitting;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Diagnostics;

/// <summary>Frames of one level and day that share luck, or that are alike: what a curve gives to them.</summary>
internal sealed class VaryingUnit
{
    private readonly ImmutableArray<Setting> _settings;
    private readonly ImmutableArray<TermCell> _pooled;
    private readonly bool _isBurst;
    private readonly Judging _judging;
    private readonly GaussRule _rule;
    private readonly double[] _room;

    internal VaryingUnit(ImmutableArray<FrameCell> cells, KeeperModel model, WhatMoved moved, GaussRule rule)
    {
        (Cells, _judging, _rule) = (cells, model.Judging, rule);
        _isBurst = !TermObservations.IsAfresh(cells[0], model.Luck);
        Setting[] settings = [.. cells.Select(c => moved.Read(c.Conditions))];
        _settings = [.. settings.Distinct()];
        _pooled = [.. cells.Zip(settings, (c, s) => new TermCell(_settings.IndexOf(s), c.Exposure.Log2Seconds, c.Frames, c.Keepers))];
        _room = new double[TermCurves.Room(_settings, rule)];
    }

    internal ImmutableArray<FrameCell> Cells { get; }

    /// <summary>Log-likelihood (Bernoulli scale).</summary>
    internal double Log(TermDraw draw)
    {
        var curves = At(draw);
        if (_isBurst)
            return curves.Log(_pooled, draw.Shift);
        var log = 0.0;
        foreach (var cell in _pooled)
            log += curves.LogAfresh(cell, draw.Shift);
        return log;
    }

    /// <summary>The law of the keepers.</summary>
    internal CountLaw Count(TermDraw draw)
    {
        var curves = At(draw);
        if (_isBurst)
            return curves.Count(_pooled, draw.Shift);
        var sum = CountLaw.Nothing;
        foreach (var cell in _pooled)
        {
            var (keep, miss) = curves.Afresh(cell, draw.Shift);
            sum = sum.Plus(CountLaw.Binomial(cell.Frames, keep, miss));
        }

        return sum;
    }

    /// <summary>Rate of one of its cells, by its place among them.</summary>
    internal double Rate(TermDraw draw, int cell) => At(draw).Afresh(_pooled[cell], draw.Shift).Keep;

    private TermCurves At(TermDraw draw) =>
        new(
            new(draw.Tau0, draw.LogSteepness, _judging.Called(draw.Ceiling), _judging.Called(draw.Floor), draw.SessionSd, draw.BurstSd),
            draw.Effects.AsSpan(),
            _settings,
            _rule,
            _room
        );
}
