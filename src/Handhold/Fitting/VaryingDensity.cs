using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>Log posterior density of the parameters of one curve in which levels vary, in coordinates whose prior is standard normal; the levels themselves are integrated out.</summary>
/// <remarks>Coordinates in turn: those of <see cref="TermDensity"/> without sessions, then of each grouping the spread of half points, that of log b, and their correlation.</remarks>
internal sealed class VaryingDensity
{
    private const int NodesOfLuck = 5;
    private readonly KeeperModel _model;
    private readonly TermDensity _fixed;
    private readonly GaussRule _burst;
    private readonly ImmutableArray<LossTable?> _correlations;

    internal VaryingDensity(KeeperModel model, WhatMoved moved, ImmutableArray<LevelSpread> spreads, VaryingFrames frames)
    {
        (_model, Moved, Spreads, Frames) = (model, moved, spreads, frames);
        _fixed = new(model, moved, new TermObservations(frames.Settings, []));
        _burst = Rule(model.Luck, frames.LargestBurst);
        _correlations = [.. spreads.Select(s => s.Correlation is { } prior ? new LossTable(new(prior.Shape, prior.Shape)) : null)];
        Dimension = _fixed.Dimension + spreads.Sum(s => s.Parameters);
        Offsets = Placed();
        Anchors =
        [
            .. frames.Blocks.Select(b => new BlockTop(
                new double[b.Upper.Sum(NumbersOf)],
                [],
                [.. b.Finest.Select(_ => default(LevelTop))],
                0
            )),
        ];
    }

    private VaryingDensity(VaryingDensity other, VaryingFrames frames, ImmutableArray<BlockTop> anchors)
    {
        (_model, Moved, Spreads, Frames, _fixed) = (other._model, other.Moved, other.Spreads, frames, other._fixed);
        (_burst, _correlations, Dimension, Offsets) = (other._burst, other._correlations, other.Dimension, other.Offsets);
        Anchors = anchors;
    }

    internal WhatMoved Moved { get; }

    internal ImmutableArray<LevelSpread> Spreads { get; }

    internal VaryingFrames Frames { get; }

    internal int Dimension { get; }

    /// <summary>Where the numbers of each upper level stand among those of its block.</summary>
    internal ImmutableArray<int> Offsets { get; }

    /// <summary>Where the search for each block's top starts.</summary>
    internal ImmutableArray<BlockTop> Anchors { get; }

    /// <summary>The same density, searching from the tops at a point.</summary>
    internal VaryingDensity From(ReadOnlySpan<double> z)
    {
        var integral = At(Read(z));
        return new(this, Frames, [.. Frames.Blocks.Zip(Anchors, (block, start) => integral.Of(block, start, IntegralRule.Few))]);
    }

    /// <summary>The same of fewer frames of the same levels.</summary>
    internal VaryingDensity Of(VaryingFrames frames) => new(this, frames, Anchors);

    /// <summary>The rule for a burst's luck.</summary>
    internal static GaussRule Rule(LuckKind luck, int largestBurst) =>
        GaussRule.Hermite(luck == LuckKind.None ? 1 : NodesOfLuck + 2 * (int)Math.Sqrt(largestBurst - 1));

    internal double Log(ReadOnlySpan<double> z) => Log(z, IntegralRule.Usual);

    /// <summary>By three nodes in each dimension: good enough to find one's way.</summary>
    internal double Rough(ReadOnlySpan<double> z) => Log(z, IntegralRule.Few);

    internal VaryingPoint Read(ReadOnlySpan<double> z)
    {
        var effects = new double[Moved.Effects.Length];
        var point = _fixed.Read(z[.._fixed.Dimension], effects);
        var loadings = ImmutableArray.CreateBuilder<LevelLoading>();
        var rest = z[_fixed.Dimension..];
        for (var g = 0; g < Spreads.Length; g++)
        {
            var place = 0;
            double? tau = Spreads[g].Tau is { } t ? TermDensity.Sd(t, rest[place++]) : null;
            double? logB = Spreads[g].LogB is { } b ? TermDensity.Sd(b, rest[place++]) : null;
            loadings.Add(LevelLoading.Of(tau, logB, _correlations[g] is { } table ? 2 * table.At(rest[place++]) - 1 : 0));
            rest = rest[place..];
        }

        loadings.Add(LevelLoading.Of(point.SessionSd, null, 0));
        return new(point, effects, loadings.ToImmutable());
    }

    /// <summary>Log-likelihood (Bernoulli scale), levels integrated out.</summary>
    internal double LogLikelihood(VaryingPoint point, IntegralRule rule) => Blocks(point, rule).Sum();

    /// <summary>The same of each block.</summary>
    internal double[] Blocks(VaryingPoint point, IntegralRule rule)
    {
        var integral = At(point);
        return [.. Frames.Blocks.Zip(Anchors, (block, anchor) => integral.Of(block, anchor, rule).Log)];
    }

    /// <summary>The integrals at a point.</summary>
    internal VaryingIntegral At(VaryingPoint point) =>
        new(new(Called(point.Typical), point.Effects, Frames.Settings, _burst), Frames, Offsets, point.Loadings);

    /// <summary>The curves as the judge's calls see them, of a level that shifts and steepens them.</summary>
    internal TermCurves Curves(VaryingPoint point, double steepening, Span<double> room) =>
        new(
            Called(point.Typical) with
            {
                LogSteepness = point.Typical.LogSteepness + steepening,
            },
            point.Effects,
            Frames.Settings,
            _burst,
            room
        );

    /// <summary>Numbers that <see cref="Curves"/> keeps.</summary>
    internal int Room => TermCurves.Room(Frames.Settings, _burst);

    private TermPoint Called(TermPoint point) =>
        point with
        {
            Ceiling = _model.Judging.Called(point.Ceiling),
            Floor = _model.Judging.Called(point.Floor),
        };

    private double Log(ReadOnlySpan<double> z, IntegralRule rule)
    {
        var log = _fixed.Log(z[.._fixed.Dimension]);
        foreach (var coordinate in z[_fixed.Dimension..])
            log -= 0.5 * coordinate * coordinate;
        if (double.IsNegativeInfinity(log))
            return log;
        log += LogLikelihood(Read(z), rule);
        return double.IsNaN(log) ? double.NegativeInfinity : log;
    }

    private int NumbersOf(int upper) =>
        Frames.Upper[upper].Grouping is var g && g < Spreads.Length && Spreads[g] is { Tau: not null, LogB: not null } ? 2 : 1;

    private ImmutableArray<int> Placed()
    {
        var offsets = new int[Frames.Upper.Length];
        foreach (var block in Frames.Blocks)
        {
            var next = 0;
            foreach (var place in block.Upper)
                (offsets[place], next) = (next, next + NumbersOf(place));
        }

        return [.. offsets];
    }
}
