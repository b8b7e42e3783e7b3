using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>Integrates one curve's likelihood over half point, session luck and burst luck at a held shape.</summary>
/// <remarks>
/// Given shape and luck sizes, bursts are independent given their session and sessions given the half point, so every integral is one-dimensional:
/// a burst's likelihood smoothed by a normal of the burst sd, the product over a session's bursts smoothed by a normal of the session sd, the product over sessions times the prior.
/// All are trapezoid sums on one uniform grid, which converge geometrically for such integrands (Trefethen and Weideman 2014, SIAM Review 56, 385-458). Checked by golden/posterior-brute-force.
/// </remarks>
internal sealed class ShapeIntegrator(
    CurveObservations data,
    NormalPrior prior,
    Judging judging,
    HalfNormalGrid sessionLuck,
    HalfNormalGrid burstLuck
)
{
    /// <summary>How far below its peak, in logs, a likelihood still counts: exp(-18) = 1.5e-8.</summary>
    internal const double Cut = 18;

    private const double Negligible = 1e-10;

    internal ShapeIntegral Integrate(Shape shape)
    {
        var spread = Math.Sqrt(prior.StandardDeviation * prior.StandardDeviation + sessionLuck.Nodes[^1] * sessionLuck.Nodes[^1]);
        BurstLikelihoods bursts = new(data, shape.Judged(judging), prior, spread, burstLuck.Nodes[^1]);
        var logs = new double[burstLuck.Nodes.Length, sessionLuck.Nodes.Length];
        var found = new List<(int Burst, HalfPointKind Kind, double LogMass, HalfPointDensity Density)>();
        for (var i = 0; i < burstLuck.Nodes.Length; i++)
        {
            var step = GridSteps.All(data, shape, prior, burstLuck.Nodes[i], bursts.SupportStart, bursts.SupportEnd);
            SessionLikelihoods days = new(bursts.Sessions(burstLuck.Nodes[i]), new(prior, sessionLuck, step, data.Sessions.Length));
            for (var k = 0; k < sessionLuck.Nodes.Length; k++)
                logs[i, k] = burstLuck.LogWeights[i] + sessionLuck.LogWeights[k] + days.LogEvidence[k];
            foreach (var (kind, logMass, density) in days.Densities)
                found.Add((i, kind, burstLuck.LogWeights[i] + logMass, density));
        }

        return Assemble(shape, logs, found);
    }

    private static ShapeIntegral Assemble(
        Shape shape,
        double[,] logs,
        List<(int Burst, HalfPointKind Kind, double LogMass, HalfPointDensity Density)> found
    )
    {
        var top = double.NegativeInfinity;
        foreach (var log in logs)
            top = Math.Max(top, log);
        var (bursts, sessions, total) = (new double[logs.GetLength(0)], new double[logs.GetLength(1)], 0.0);
        for (var i = 0; i < bursts.Length; i++)
        {
            for (var k = 0; k < sessions.Length; k++)
            {
                var share = Math.Exp(logs[i, k] - top);
                bursts[i] += share;
                sessions[k] += share;
                total += share;
            }
        }

        for (var i = 0; i < bursts.Length; i++)
            bursts[i] /= total;
        for (var k = 0; k < sessions.Length; k++)
            sessions[k] /= total;
        var logEvidence = top + Math.Log(total);
        var parts = new List<HalfPointPart>();
        foreach (var part in found)
        {
            var share = Math.Exp(part.LogMass - logEvidence);
            if (share > Negligible)
                parts.Add(new(part.Kind, part.Burst, share, part.Density));
        }

        return new(shape, logEvidence, bursts, sessions, parts);
    }
}
