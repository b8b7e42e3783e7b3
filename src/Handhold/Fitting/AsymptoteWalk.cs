using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>The nodes of ceiling and floor that the curves of one fit share.</summary>
internal sealed class AsymptoteWalk
{
    private const int MostHalvings = 5;
    private readonly List<AsymptoteNode> _nodes = [];

    /// <param name="model">Says which of the two are estimated.</param>
    /// <param name="logEvidence">Log evidence of all curves at a ceiling and a floor, given also the log prior of the two.</param>
    internal AsymptoteWalk(KeeperModel model, Func<double, double, double, double> logEvidence)
    {
        Ceilings = model.Ceiling.Value is null ? new(model.Priors.CeilingLoss, 0) : null;
        Floors = model.Floor.Value is null ? new(model.Priors.Floor, 0) : null;
        for (var halvings = 0; ; halvings++)
        {
            _nodes.Clear();
            WalkFloors(model, logEvidence);
            var coarseCeiling = Ceilings is not null && Walk.Curvature(Marginal(n => n.CeilingNode).Logs) > Walk.TooCoarse;
            var coarseFloor = Floors is not null && Walk.Curvature(Marginal(n => n.FloorNode).Logs) > Walk.TooCoarse;
            if (halvings == MostHalvings || !(coarseCeiling || coarseFloor))
                break;
            if (coarseCeiling)
                Ceilings = new(model.Priors.CeilingLoss, Ceilings!.Halvings + 1);
            if (coarseFloor)
                Floors = new(model.Priors.Floor, Floors!.Halvings + 1);
        }

        LogEvidence = Elementary.LogSum([.. _nodes.Select(n => n.LogWeight)]);
    }

    /// <summary>The ceiling's grid; null when fixed.</summary>
    internal LossGrid? Ceilings { get; private set; }

    /// <summary>The floor's grid; null when fixed.</summary>
    internal LossGrid? Floors { get; private set; }

    internal IReadOnlyList<AsymptoteNode> Nodes => _nodes;

    /// <summary>log evidence of the whole fit, Bernoulli scale.</summary>
    internal double LogEvidence { get; }

    /// <summary>First node and log weights of a marginal.</summary>
    internal (int First, double[] Logs) Marginal(Func<AsymptoteNode, int> node)
    {
        var groups = _nodes.GroupBy(node).OrderBy(g => g.Key).Select(g => Elementary.LogSum([.. g.Select(n => n.LogWeight)]));
        return (_nodes.Min(node), [.. groups]);
    }

    private void WalkFloors(KeeperModel model, Func<double, double, double, double> logEvidence)
    {
        if (Floors is null)
            _ = WalkCeilings(0, model.Floor.Value!.Value, 0, model, logEvidence);
        else
            _ = Walk.Outward(
                0,
                node =>
                    WalkCeilings(
                        node,
                        Floors.Loss(Floors.At(node)),
                        Floors.LogDensity(Floors.At(node)) + Math.Log(Floors.Step),
                        model,
                        logEvidence
                    )
            );
    }

    private double WalkCeilings(
        int floorNode,
        double floor,
        double logFloor,
        KeeperModel model,
        Func<double, double, double, double> logEvidence
    )
    {
        var from = _nodes.Count;
        if (Ceilings is null)
            Add(0, model.Ceiling.Value!.Value, logFloor);
        else
            _ = Walk.Outward(
                0,
                node =>
                    Add(
                        node,
                        1 - Ceilings.Loss(Ceilings.At(node)),
                        logFloor + Ceilings.LogDensity(Ceilings.At(node)) + Math.Log(Ceilings.Step)
                    )
            );
        return Elementary.LogSum([.. _nodes.Skip(from).Select(n => n.LogWeight)]);

        double Add(int ceilingNode, double ceiling, double logPrior)
        {
            var log = ceiling > floor ? logPrior + logEvidence(ceiling, floor, logPrior) : double.NegativeInfinity;
            _nodes.Add(new(ceilingNode, floorNode, ceiling, floor, log));
            return log;
        }
    }
}
