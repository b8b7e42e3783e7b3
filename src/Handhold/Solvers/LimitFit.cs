namespace Handhold.Solvers;

/// <summary>The climb on the rows that overlap, the others at the end of their curve.</summary>
internal sealed class LimitFit
{
    private readonly double[] _solution;
    private readonly double[] _variances;
    private readonly bool[] _finite;

    internal LimitFit(BinomialProblem problem)
    {
        Separation = Separation.Of(problem);
        if (Separation.Kind == SeparationKind.Unknown)
            throw new SolverException(
                "Whether keepers and rejects separate could not be decided, so no limit is known. Take the bias-reduced estimator.",
                new([], double.NaN, 0, double.NaN)
            );
        var (rows, columns) = (Separation.Rows.ToHashSet(), problem.Columns.Length);
        OrthonormalDesign all = new(problem.Settled(rows, [.. Enumerable.Range(0, columns)]));
        int[] kept = [.. Enumerable.Range(0, columns).Where(j => !all.IsDependent(j))];
        var settled = problem.Settled(rows, kept);
        var fit = HighestClimb.Of(BinomialEstimator.Likelihood, settled, new(settled), new());
        if (fit.End == AscentEnd.Stalled)
            throw new SolverException(
                "The likelihood still rose on the rows that overlap. The best point is attached.",
                fit.Ascent.Report()
            );
        (Objective, Deviance) = (fit.Ascent.Objective, fit.Ascent.Deviance());
        (_solution, _variances, _finite) = (new double[columns], new double[columns], new bool[columns]);
        var (b, covariance, size) = (fit.Ascent.Coefficients(), fit.Ascent.Covariance(), fit.Ascent.Theta.Length);
        for (var k = 0; k < kept.Length; k++)
            (_solution[kept[k]], _variances[kept[k]], _finite[kept[k]]) = (b[k], covariance[k * size + k], fit.End == AscentEnd.Converged);
        foreach (var gone in Separation.Columns)
            _finite[gone.Index] = false;
    }

    internal Separation Separation { get; }

    internal double Objective { get; }

    internal double Deviance { get; }

    /// <summary>A point with the limit's rates on the rows that overlap: what stays finite has its value there.</summary>
    internal ReadOnlySpan<double> Solution => _solution;

    internal LimitEstimate Estimate() =>
        new(
            Separation,
            [.. _solution.Select((b, j) => _finite[j] ? b : (double?)null)],
            [.. _variances.Select((v, j) => _finite[j] ? Math.Sqrt(v) : (double?)null)]
        )
        {
            LogLikelihood = Objective,
            Deviance = Deviance,
        };
}
