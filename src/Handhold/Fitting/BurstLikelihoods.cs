using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>Log-likelihoods of sessions along the half point, bursts' luck averaged out, on a grid that resolves any one burst.</summary>
internal sealed class BurstLikelihoods
{
    private const double Margin = 14; // logits beyond the exposures tested where the likelihood has flattened
    private const double Spreads = 7; // prior sds looked at
    private const double Pad = 3.5; // burst sds by which luck may widen the support
    private const double StepPerLuck = 0.3;
    private const double MostPoints = 1 << 22;
    private const double FarBelow = 40; // where luck cannot reach: the likelihood without luck, as good as zero
    private readonly CurveObservations _data;
    private readonly Dictionary<string, double[]> _logs = [];
    private readonly double _start;
    private readonly double _step;

    internal BurstLikelihoods(CurveObservations data, Shape shape, NormalPrior prior, double spread, double largestBurstSd)
    {
        _data = data;
        _step = GridSteps.Burst(data, shape);
        var margin = (Margin + Math.Log(1 + data.Frames.Sum())) / shape.Steepness;
        var luck = (Pad + LuckKernel.Reach) * largestBurstSd + 6 * _step;
        _start = Math.Min(prior.Mean - Spreads * spread, data.Exposures[0] - margin) - luck;
        var end = Math.Max(prior.Mean + Spreads * spread, data.Exposures[^1] + margin) + luck;
        var points = Math.Ceiling((end - _start) / _step) + 1;
        if (!(points * data.Exposures.Length < MostPoints))
            throw new CellException(
                "The frames and priors",
                FormattableString.Invariant(
                    $"they call for {points:0} half points {_step:0.#######} stops apart at a steepness of {shape.Steepness:0.##} logits a stop, too many to look at."
                ),
                "Check exposures and counts, and narrow the prior of b."
            );
        var count = (int)points;
        Fill(shape, count);
        (SupportStart, SupportEnd) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var session in data.Sessions)
        {
            var (from, to) = new SampledFunction(_start, _step, Sum(session, _logs, count))
                .PlusNormal(prior.Mean, spread)
                .Support(ShapeIntegrator.Cut);
            (SupportStart, SupportEnd) = (Math.Min(SupportStart, from), Math.Max(SupportEnd, to));
        }
    }

    /// <summary>First half point that matters to a session without burst luck, log2 seconds.</summary>
    internal double SupportStart { get; }

    /// <summary>Last half point that matters.</summary>
    internal double SupportEnd { get; }

    /// <summary>The sessions when bursts have luck of <paramref name="sd"/> stops: the wider the luck, the smoother they are and the coarser their grid.</summary>
    internal ImmutableArray<SampledFunction> Sessions(double sd)
    {
        var weights = LuckKernel.Weights(sd, _step);
        var radius = weights.Length / 2;
        var stride = Math.Max(1, (int)(StepPerLuck * sd / _step));
        var pad = Pad * sd + 5 * stride * _step;
        var from = Math.Max(radius, (int)Math.Floor((SupportStart - pad - _start) / _step));
        var to = Math.Min(_logs.First().Value.Length - radius, (int)Math.Ceiling((SupportEnd + pad - _start) / _step) + 1);
        var count = Math.Max(SampledFunction.Nodes, (to - from) / stride);
        var smoothed = _logs.ToDictionary(p => p.Key, p => Smoothed(p.Value, from, stride, count, weights));
        return [.. _data.Sessions.Select(s => new SampledFunction(_start + from * _step, stride * _step, Sum(s, smoothed, count)))];
    }

    private void Fill(Shape shape, int count)
    {
        var (keeper, reject) = (new double[_data.Exposures.Length][], new double[_data.Exposures.Length][]);
        for (var x = 0; x < keeper.Length; x++)
        {
            (keeper[x], reject[x]) = (new double[count], new double[count]);
            FramesLikelihood.Fill(shape, _data.Exposures[x], _start, _step, keeper[x], reject[x]);
        }

        foreach (var pattern in _data.Sessions.SelectMany(s => s))
        {
            if (_logs.ContainsKey(pattern.Key))
                continue;
            var logs = _logs[pattern.Key] = new double[count];
            foreach (var (x, frames, keepers) in pattern.Cells)
            {
                if (keepers > 0)
                    for (var i = 0; i < count; i++)
                        logs[i] += keepers * keeper[x][i];
                if (frames > keepers)
                    for (var i = 0; i < count; i++)
                        logs[i] += (frames - keepers) * reject[x][i];
            }
        }
    }

    private static double[] Sum(ImmutableArray<BurstPattern> session, Dictionary<string, double[]> logs, int count)
    {
        var sum = new double[count];
        foreach (var pattern in session)
        {
            var part = logs[pattern.Key];
            for (var i = 0; i < count; i++)
                sum[i] += pattern.Bursts * part[i];
        }

        return sum;
    }

    /// <summary>log E exp(logs(t + sd Z)) at count points, stride grid steps apart.</summary>
    private static double[] Smoothed(double[] logs, int from, int stride, int count, double[] weights)
    {
        var radius = weights.Length / 2;
        var smoothed = new double[count];
        if (radius == 0)
        {
            for (var i = 0; i < count; i++)
                smoothed[i] = logs[from + i * stride];
            return smoothed;
        }

        var window = logs.AsSpan(from - radius, Math.Min(logs.Length - from + radius, (count - 1) * stride + 1 + 2 * radius));
        var top = double.NegativeInfinity;
        foreach (var log in window)
            top = Math.Max(top, log);
        var values = new double[window.Length];
        for (var i = 0; i < values.Length; i++)
            values[i] = Math.Exp(window[i] - top);
        for (var i = 0; i < count; i++)
        {
            var value = Math.Max(0, LuckKernel.SmoothAt(values, weights, radius + i * stride));
            smoothed[i] = Math.Max(top + Math.Log(value), logs[from + i * stride] - FarBelow);
        }

        return smoothed;
    }
}
