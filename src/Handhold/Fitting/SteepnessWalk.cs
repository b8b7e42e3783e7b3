using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>One curve's evidence and posterior parts at held ceiling and floor, integrated over log steepness.</summary>
internal sealed class SteepnessWalk(ShapeIntegrator integrator, LogNormalPrior prior, bool alone, CancellationToken cancellation)
{
    private const double FirstStepPerSd = 0.65;
    private const double TooCoarse = 0.8; // a step of 0.9 sds: exposures for low rates turn fast with steepness
    private const int MostHalvings = 6;
    private readonly Dictionary<(double Ceiling, double Floor), List<(int Node, double LogWeight, ShapeIntegral Integral)>> _walks = [];
    private int _centre;
    private double _top = double.NegativeInfinity;

    /// <summary>Distance of nodes of log steepness; zero before the first walk.</summary>
    internal double Step { get; private set; }

    /// <summary>Log steepness at a node.</summary>
    internal double At(int node) => Math.Log(prior.Median) + node * Step;

    /// <summary>log of the integral over everything but ceiling and floor.</summary>
    /// <param name="ceiling">Ceiling.</param>
    /// <param name="floor">Floor.</param>
    /// <param name="logPrior">Log prior of the two: a curve alone need not walk where they are too unlikely to matter.</param>
    internal double LogEvidence(double ceiling, double floor, double logPrior)
    {
        if (!_walks.ContainsKey((ceiling, floor)))
            _walks[(ceiling, floor)] = Found(ceiling, floor, logPrior);
        return Elementary.LogSum([.. Nodes(ceiling, floor).Select(n => n.LogWeight)]);
    }

    /// <summary>The nodes of a ceiling and a floor that were walked, with the log of their part of the evidence.</summary>
    internal List<(int Node, double LogWeight, ShapeIntegral Integral)> Nodes(double ceiling, double floor) => _walks[(ceiling, floor)];

    private List<(int Node, double LogWeight, ShapeIntegral Integral)> Found(double ceiling, double floor, double logPrior)
    {
        if (Step > 0)
            return Outward(ceiling, floor, logPrior);
        Step = FirstStepPerSd * prior.LogStandardDeviation;
        var nodes = Outward(ceiling, floor, logPrior);
        for (var i = 0; i < MostHalvings && Walk.Curvature([.. nodes.Select(n => n.LogWeight)]) > TooCoarse; i++)
        {
            Step /= 2;
            _centre *= 2;
            nodes = Outward(ceiling, floor, logPrior);
        }

        return nodes;
    }

    private List<(int, double LogWeight, ShapeIntegral)> Outward(double ceiling, double floor, double logPrior)
    {
        var integrals = new Dictionary<int, ShapeIntegral>();
        var (first, logs) = Walk.Outward(_centre, LogWeight, alone ? _top - logPrior : double.NegativeInfinity);
        _centre = first + logs.IndexOf(logs.Max());
        _top = Math.Max(_top, logs.Max() + logPrior);
        return [.. logs.Select((log, i) => (first + i, log, integrals[first + i]))];

        double LogWeight(int node)
        {
            cancellation.ThrowIfCancellationRequested();
            var integral = integrals[node] = integrator.Integrate(new(Math.Exp(At(node)), ceiling, floor));
            var z = node * Step / prior.LogStandardDeviation;
            return integral.LogEvidence - 0.5 * z * z - Math.Log(prior.LogStandardDeviation * Math.Sqrt(2 * Math.PI)) + Math.Log(Step);
        }
    }
}
