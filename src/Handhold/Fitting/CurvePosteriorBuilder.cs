using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>Weighs the parts of one curve's posterior and summarises its parameters.</summary>
internal sealed class CurvePosteriorBuilder
{
    private const double Negligible = 1e-8;
    private readonly List<(double Weight, int Node, ShapeIntegral Integral)> _integrals = [];
    private readonly SteepnessWalk _steepness;
    private readonly HalfNormalGrid _sessionLuck;
    private readonly HalfNormalGrid _burstLuck;

    internal CurvePosteriorBuilder(SteepnessWalk steepness, AsymptoteWalk asymptotes, HalfNormalGrid sessionLuck, HalfNormalGrid burstLuck)
    {
        (_steepness, _sessionLuck, _burstLuck) = (steepness, sessionLuck, burstLuck);
        foreach (var node in asymptotes.Nodes)
        {
            var share = Math.Exp(node.LogWeight - asymptotes.LogEvidence);
            if (share < Negligible)
                continue;
            var nodes = steepness.Nodes(node.Ceiling, node.Floor);
            var evidence = Elementary.LogSum([.. nodes.Select(n => n.LogWeight)]);
            foreach (var (index, log, integral) in nodes)
            {
                var weight = share * Math.Exp(log - evidence);
                if (weight > Negligible)
                    _integrals.Add((weight, index, integral));
            }
        }
    }

    internal ImmutableArray<CurveAtom> Atoms(HalfPointKind kind)
    {
        var atoms = ImmutableArray.CreateBuilder<CurveAtom>();
        foreach (var (weight, _, integral) in _integrals)
        {
            foreach (var part in integral.Parts)
            {
                if (part.Kind != kind || weight * part.Share < Negligible)
                    continue;
                var shape = integral.Shape;
                atoms.Add(
                    new(weight * part.Share, shape.Steepness, shape.Ceiling, shape.Floor, _burstLuck.Nodes[part.BurstNode], part.Density)
                );
            }
        }

        var total = atoms.Sum(a => a.Weight);
        return [.. atoms.Select(a => a with { Weight = a.Weight / total })];
    }

    /// <summary>Natural-log steepness: log marginal at uniform nodes.</summary>
    internal (double Start, double Step, double[] Logs) Steepness()
    {
        var groups = _integrals.GroupBy(i => i.Node).OrderBy(g => g.Key).ToArray();
        return (_steepness.At(groups[0].Key), _steepness.Step, [.. groups.Select(g => Math.Log(g.Sum(i => i.Weight)))]);
    }

    internal double SessionLuckStep => _sessionLuck.Step;

    internal double BurstLuckStep => _burstLuck.Step;

    /// <summary>Log marginal density of a luck's sd at its nodes; the last ones may be negligible.</summary>
    internal double[] Luck(bool ofSession)
    {
        var grid = ofSession ? _sessionLuck : _burstLuck;
        var shares = new double[grid.Nodes.Length];
        foreach (var (weight, _, integral) in _integrals)
        {
            var from = ofSession ? integral.SessionShares : integral.BurstShares;
            for (var i = 0; i < shares.Length; i++)
                shares[i] += weight * from[i];
        }

        return [.. shares.Select((s, i) => Math.Log(Math.Max(s, 1e-300)) - (i == 0 ? Math.Log(0.5) : 0))];
    }
}
