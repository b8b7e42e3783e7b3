namespace Handhold.Solvers;

/// <summary>The log-likelihood of one varying intercept by adaptive quadrature: an integral a level.</summary>
internal sealed class GroupedQuadrature : IGroupedLikelihood
{
    private readonly ClusteredLikelihood _likelihood;
    private readonly double[] _curvature;

    internal GroupedQuadrature(ClusteredProblem problem, OrthonormalDesign design, HermiteNodes nodes, ReadOnlySpan<double> contrast)
    {
        _likelihood = new(problem, design, new NormalShift(problem, nodes), contrast);
        _curvature = new double[Size * Size];
    }

    /// <inheritdoc />
    public int Size => Basis.Columns + 1;

    /// <inheritdoc />
    public TurnedDesign Basis => _likelihood.Basis;

    /// <inheritdoc />
    public double At(ReadOnlySpan<double> point, Span<double> gradient) => _likelihood.At(point, gradient, _curvature);
}
