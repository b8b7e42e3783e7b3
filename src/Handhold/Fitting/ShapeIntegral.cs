namespace Handhold.Fitting;

/// <summary>What is left of a curve's posterior when steepness, ceiling and floor are held: evidence and half-point densities.</summary>
internal sealed class ShapeIntegral
{
    internal ShapeIntegral(Shape shape, double logEvidence, double[] burstShares, double[] sessionShares, List<HalfPointPart> parts) =>
        (Shape, LogEvidence, BurstShares, SessionShares, Parts) = (shape, logEvidence, burstShares, sessionShares, parts);

    internal Shape Shape { get; }

    /// <summary>log of the integral of likelihood and priors over half point and luck (Bernoulli scale).</summary>
    internal double LogEvidence { get; }

    /// <summary>Share of the evidence at each burst-luck node; sums to one.</summary>
    internal double[] BurstShares { get; }

    /// <summary>Share of the evidence at each session-luck node; sums to one.</summary>
    internal double[] SessionShares { get; }

    /// <summary>Densities of the half point, in parts; their shares sum to one for each kind.</summary>
    internal List<HalfPointPart> Parts { get; }
}
