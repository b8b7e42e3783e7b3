using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>Sessions' likelihoods joined by each size of session luck: evidence and densities of the half point.</summary>
internal sealed class SessionLikelihoods
{
    private const double Negligible = 1e-11;
    private readonly ImmutableArray<SampledFunction> _sessions;
    private readonly SessionGrid _grid;
    private readonly List<(HalfPointKind Kind, double LogMass, HalfPointDensity Density)> _densities = [];

    internal SessionLikelihoods(ImmutableArray<SampledFunction> sessions, SessionGrid grid)
    {
        (_sessions, _grid) = (sessions, grid);
        LogEvidence = new double[grid.Luck.Nodes.Length];
        WithoutLuck();
        if (grid.Luck.Nodes.Length > 1)
            WithLuck();
        if (sessions.Length == 1)
            SameDay();
    }

    /// <summary>log of the integral of likelihood and prior over the half point at each node of session luck; the nodes' weights are not in it.</summary>
    internal double[] LogEvidence { get; }

    /// <summary>Densities with the log of their mass, node weights included.</summary>
    internal IReadOnlyList<(HalfPointKind Kind, double LogMass, HalfPointDensity Density)> Densities => _densities;

    private void WithoutLuck()
    {
        var (from, logs) = Sampled(Joint(), 0);
        for (var i = 0; i < logs.Length; i++)
            logs[i] += _grid.LogPrior(_grid.Position(from + i), 0);
        var (values, top) = Exponentials(logs);
        LogEvidence[0] = top + Math.Log(values.Sum() * _grid.Step);
        var logMass = _grid.Luck.LogWeights[0] + LogEvidence[0];
        Add(HalfPointKind.Habitual, logMass, from, 1, values);
        Add(HalfPointKind.AnotherDay, logMass, from, 1, values);
    }

    private void WithLuck()
    {
        var sessions = _sessions
            .Select(s =>
            {
                var (from, logs) = Sampled(s, _grid.Luck.Nodes[^1]);
                var (values, scale) = Exponentials(logs);
                return (From: from, Values: values, Scale: scale);
            })
            .ToArray();
        var (start, end) = (sessions.Min(s => s.From), sessions.Max(s => s.From + s.Values.Length));
        var (first, last) = Coarse(start, end, _grid.Luck.Nodes.Length - 1);
        var margin = _grid.CoarseWeights[^1].Length / 2;
        var (habitual, another, joint) = (
            new double[last - first + 1],
            new double[last - first + 1 + 2 * margin],
            new double[last - first + 1]
        );
        var top =
            sessions.Sum(s => s.Scale)
            + _grid.LogPrior(Math.Clamp(_grid.Prior.Mean, _grid.Position(first * _grid.Stride), _grid.Position(last * _grid.Stride)), 0);
        var prior = new double[joint.Length];
        for (var j = 0; j < prior.Length; j++)
            prior[j] = Math.Exp(_grid.LogPrior(_grid.Position((first + j) * _grid.Stride), 0) + sessions.Sum(s => s.Scale) - top);
        for (var node = 1; node < _grid.Luck.Nodes.Length; node++)
        {
            var (from, to) = Coarse(start, end, node);
            (from, to) = (Math.Max(from - first, 0), Math.Min(to - first + 1, joint.Length));
            var highest = 0.0;
            for (var j = from; j < to; j++)
            {
                var position = (first + j) * _grid.Stride;
                if (sessions.Length == 1)
                    joint[j] =
                        prior[j] * Math.Max(0, LuckKernel.SmoothAt(sessions[0].Values, _grid.Weights[node], position - sessions[0].From));
                else
                {
                    // Logs, since many sessions' product may underflow.
                    var log = _grid.LogPrior(_grid.Position(position), 0) - top;
                    foreach (var (at, values, scale) in sessions)
                        log += scale + Math.Log(Math.Max(0, LuckKernel.SmoothAt(values, _grid.Weights[node], position - at)));
                    joint[j] = Math.Exp(log);
                }

                highest = Math.Max(highest, joint[j]);
            }

            while (from < to && joint[from] < highest * Negligible)
                from++;
            while (to > from && joint[to - 1] < highest * Negligible)
                to--;
            var kept = joint.AsSpan(from, to - from);
            var (sum, share) = (0.0, Math.Exp(_grid.Luck.LogWeights[node]));
            for (var j = 0; j < kept.Length; j++)
            {
                sum += kept[j];
                habitual[from + j] += share * kept[j];
            }

            LogEvidence[node] = top + Math.Log(sum * _grid.CoarseStep);
            var weights = _grid.CoarseWeights[node];
            var radius = weights.Length / 2;
            for (var j = -radius; j < kept.Length + radius; j++)
                another[margin + from + j] += share * Math.Max(0, LuckKernel.SmoothAt(kept, weights, j));
        }

        var logMass = top + Math.Log(habitual.Sum() * _grid.CoarseStep);
        Add(HalfPointKind.Habitual, logMass, first * _grid.Stride, _grid.Stride, habitual);
        Add(HalfPointKind.AnotherDay, logMass, (first - margin) * _grid.Stride, _grid.Stride, another);
    }

    /// <summary>Coarse indices that a day's luck of a node can reach from a span of fine ones.</summary>
    private (int First, int Last) Coarse(int start, int end, int node)
    {
        var reach = _grid.Weights[node].Length / 2;
        return ((int)Math.Floor((start - reach) / (double)_grid.Stride), (int)Math.Ceiling((end + reach) / (double)_grid.Stride));
    }

    private void SameDay()
    {
        var (from, logs) = Sampled(_sessions[0], _grid.Luck.Nodes[^1]);
        for (var i = 0; i < logs.Length; i++)
        {
            var prior = 0.0;
            for (var node = 0; node < _grid.Luck.Nodes.Length; node++)
                prior += Math.Exp(_grid.Luck.LogWeights[node] + _grid.LogPrior(_grid.Position(from + i), node));
            logs[i] += Math.Log(prior);
        }

        var (values, top) = Exponentials(logs);
        Add(HalfPointKind.SameDay, top + Math.Log(values.Sum() * _grid.Step), from, 1, values);
    }

    private SampledFunction Joint()
    {
        var sum = new double[_sessions[0].Values.Length];
        foreach (var session in _sessions)
            for (var i = 0; i < sum.Length; i++)
                sum[i] += session.Values[i];
        return new(_sessions[0].Start, _sessions[0].Step, sum);
    }

    /// <summary>The function on the fine grid, where with the prior of a day's half point it is not negligible.</summary>
    private (int From, double[] Logs) Sampled(SampledFunction log, double luck)
    {
        var spread = Math.Sqrt(_grid.Prior.StandardDeviation * _grid.Prior.StandardDeviation + luck * luck);
        var (start, end) = log.PlusNormal(_grid.Prior.Mean, spread).Support(ShapeIntegrator.Cut);
        var (from, to) = (_grid.Index(start), _grid.Index(end) + 1);
        var logs = new double[to - from + 1];
        for (var i = 0; i < logs.Length; i++)
            logs[i] = log.At(_grid.Position(from + i));
        return (from, logs);
    }

    private void Add(HalfPointKind kind, double logMass, int from, int stride, double[] values)
    {
        var level = values.Max() * Negligible;
        var (first, end) = (0, values.Length);
        while (first < end && !(values[first] > level))
            first++;
        while (end > first && !(values[end - 1] > level))
            end--;
        if (end - first > 1)
            _densities.Add(
                (kind, logMass, new(_grid.Position(from + first * stride), stride * _grid.Step, values.AsSpan(first, end - first)))
            );
    }

    private static (double[] Values, double LogScale) Exponentials(double[] logs)
    {
        var top = logs.Max();
        var values = new double[logs.Length];
        for (var i = 0; i < values.Length; i++)
            values[i] = Math.Exp(logs[i] - top);
        return (values, top);
    }
}
