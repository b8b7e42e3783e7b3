using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>The fine grid of half points at a held shape, a coarser one for half points blurred by session luck, and the weights that blur.</summary>
internal sealed class SessionGrid
{
    private const double CoarseStepPerSd = 0.4;
    private readonly double[] _logVariances;

    internal SessionGrid(NormalPrior prior, HalfNormalGrid luck, double step, int sessions)
    {
        (Prior, Luck, Step) = (prior, luck, step);
        var smallest = Math.Min(luck.Nodes.Length > 1 ? luck.Nodes[1] : 0, prior.StandardDeviation) / Math.Sqrt(sessions);
        Stride = Math.Max(1, (int)(Math.Sqrt(CoarseStepPerSd * smallest * (CoarseStepPerSd * smallest) + step * step) / step)); // the fine step is 0.4 sds of the likelihood
        _logVariances = [.. luck.Nodes.Select(sd => Math.Log(2 * Math.PI * (prior.StandardDeviation * prior.StandardDeviation + sd * sd)))];
        Weights = [.. luck.Nodes.Select(sd => LuckKernel.Weights(sd, step))];
        CoarseWeights = [.. luck.Nodes.Select(sd => LuckKernel.Weights(sd, CoarseStep))];
    }

    internal NormalPrior Prior { get; }

    internal HalfNormalGrid Luck { get; }

    internal double Step { get; }

    /// <summary>Fine steps in a coarse one.</summary>
    internal int Stride { get; }

    internal double CoarseStep => Stride * Step;

    /// <summary>Blur of each luck node on the fine grid.</summary>
    internal double[][] Weights { get; }

    /// <summary>Blur of each luck node on the coarse grid.</summary>
    internal double[][] CoarseWeights { get; }

    /// <summary>Half point of a fine index, log2 seconds.</summary>
    internal double Position(int index) => Prior.Mean + index * Step;

    /// <summary>Last fine index not above a half point.</summary>
    internal int Index(double halfPoint) => (int)Math.Floor((halfPoint - Prior.Mean) / Step);

    /// <summary>Log prior density of the half point of a day whose luck has the sd of a node; node 0 is the habitual half point.</summary>
    internal double LogPrior(double halfPoint, int node)
    {
        var z = halfPoint - Prior.Mean;
        return -0.5
            * (z * z / (Prior.StandardDeviation * Prior.StandardDeviation + Luck.Nodes[node] * Luck.Nodes[node]) + _logVariances[node]);
    }
}
