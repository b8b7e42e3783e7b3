namespace Handhold.Solvers;

/// <summary>How the frames of a cluster share luck: its log-likelihood given their predictors and a spread, without binomial coefficients.</summary>
/// <remarks>It is even in the spread, which so may pass through zero; at zero frames are independent. An instance owns its workspace: one thread at a time.</remarks>
internal interface IClusterLaw
{
    /// <summary>The log-likelihood.</summary>
    double LogLikelihood(Cluster cluster, double spread);

    /// <summary>The log-likelihood with its derivatives in the predictors of the rows and, last, in the spread.</summary>
    /// <param name="cluster">The cluster.</param>
    /// <param name="spread">The spread.</param>
    /// <param name="gradient">First derivatives, rows + 1.</param>
    /// <param name="curvature">Minus the second derivatives, (rows + 1) × (rows + 1); the lower triangle is written.</param>
    double Evaluate(Cluster cluster, double spread, Span<double> gradient, Span<double> curvature);
}
