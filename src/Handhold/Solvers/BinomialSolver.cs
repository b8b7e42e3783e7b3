namespace Handhold.Solvers;

/// <summary>Maximises likelihoods of <see cref="BinomialProblem"/>s.</summary>
/// <remarks>
/// Newton's method on the orthonormalised design, each step by QR of the weighted design: no condition number is squared. An intercept and one covariate under the
/// logit take a shorter way to the same maximum. Checked by golden/bliss, golden/budworm and golden/separated.
/// </remarks>
public static class BinomialSolver
{
    private static readonly SolverOptions s_default = new();

    /// <summary>Maximum likelihood, of an estimated ceiling and floor too.</summary>
    /// <remarks>
    /// With a ceiling below 1 or a floor above 0 the likelihood may have several maxima: the best of those reached from a few fixed starts is given.
    /// </remarks>
    /// <exception cref="ArgumentException">Offsets, ceiling, floor or restriction do not fit the problem.</exception>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    /// <exception cref="SolverException">There is no finite maximum (ask <see cref="Separation"/> first), or the steps ran out.</exception>
    public static BinomialEstimate Likelihood(BinomialProblem problem, SolverOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return Fit(BinomialEstimator.Likelihood, problem, options);
    }

    /// <summary>Maximum of the likelihood penalised by Jeffreys' prior; finite for every design of full rank.</summary>
    /// <remarks>
    /// Log-likelihood + ½ log |XᵀWX|, W the expected information of the rows. It may have several maxima, the more so with the complementary log-log link:
    /// the highest of those reached from fixed starts is given. Source: Firth (1993), Biometrika 80, 27-38; finiteness for all three links:
    /// Kosmidis and Firth (2021), Biometrika 108, 71-82.
    /// </remarks>
    /// <exception cref="ArgumentException">Ceiling or floor is to be estimated: only the likelihood can; or offsets, ceiling, floor or restriction do not fit.</exception>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    /// <exception cref="SolverException">The steps ran out.</exception>
    public static BinomialEstimate BiasReduced(BinomialProblem problem, SolverOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return Fit(BinomialEstimator.BiasReduced, problem, options);
    }

    /// <summary>Where the likelihood goes when keepers and rejects separate: its least upper bound and the coefficients that stay finite.</summary>
    /// <remarks>Equals the maximum where that is finite.</remarks>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    /// <exception cref="SolverException">The verdict on separation is unknown, or the solver stopped short on the rows that overlap.</exception>
    public static LimitEstimate Limit(BinomialProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new LimitFit(problem.Checked()).Estimate();
    }

    private static BinomialEstimate Fit(BinomialEstimator estimator, BinomialProblem problem, SolverOptions? options) =>
        options is null && Line(estimator, problem.Checked()) is { Converged: true } line
            ? line.Estimate(estimator)
            : Top(estimator, problem, OrthonormalDesign.Of(problem.Checked(options)), options ?? s_default).Estimate;

    private static LogisticFit Line(BinomialEstimator estimator, BinomialProblem problem)
    {
        LogisticLine line = new(problem.Design.Span, problem.Frames.Span, problem.Keepers.Span);
        return estimator == BinomialEstimator.Likelihood && problem.IsPlainLine() ? line.Likelihood()
            : estimator == BinomialEstimator.BiasReduced && problem.IsEvenLine() ? line.BiasReduced()
            : LogisticFit.None;
    }

    /// <summary>The maximum and the climb that ended there.</summary>
    internal static (BinomialEstimate Estimate, Ascent Ascent) Top(
        BinomialEstimator estimator,
        BinomialProblem problem,
        OrthonormalDesign design,
        SolverOptions options,
        params ReadOnlySpan<ClimbStart> near
    )
    {
        var climb = HighestClimb.Of(estimator, problem, design, options, near);
        return climb.End == AscentEnd.Converged || (climb.End == AscentEnd.Flat && IsTop(estimator, problem, climb.Ascent))
            ? (Finished(problem, climb.Ascent, estimator), climb.Ascent)
            : throw Stopped(estimator, problem, climb);
    }

    // Without separation the top exists; where only tails are left to tell it from its surroundings, rounding hides which point it is.
    private static bool IsTop(BinomialEstimator estimator, BinomialProblem problem, Ascent end) =>
        estimator == BinomialEstimator.Likelihood
        && problem is { Ceiling: 1, Floor: 0 }
        && end.IsDefinite
        && Separation.Of(problem).Kind == SeparationKind.None;

    private static BinomialEstimate Finished(BinomialProblem problem, Ascent ascent, BinomialEstimator estimator)
    {
        var (size, columns, all) = (ascent.Theta.Length, problem.Columns.Length, ascent.Covariance());
        double Error(int place) => Math.Sqrt(all[place * size + place]);
        return new(
            estimator,
            ascent.Coefficients(),
            [.. from i in Enumerable.Range(0, columns) from j in Enumerable.Range(0, columns) select all[i * size + j]],
            ascent.Report()
        )
        {
            LogLikelihood = ascent.LogLikelihood,
            PenalisedLogLikelihood = estimator == BinomialEstimator.BiasReduced ? ascent.Objective : null,
            Deviance = ascent.Deviance(),
            Ceiling = ascent.Ceiling,
            Floor = ascent.Floor,
            CeilingStandardError = ascent.CeilingPlace is { } c ? Error(c) : null,
            FloorStandardError = ascent.FloorPlace is { } f ? Error(f) : null,
        };
    }

    private static SolverException Stopped(BinomialEstimator estimator, BinomialProblem problem, HighestClimb climb)
    {
        var report = climb.Ascent.Report();
        if (estimator == BinomialEstimator.BiasReduced)
            return new($"The bias-reduced fit stopped short after {report.Iterations} steps. Its best point is attached.", report);
        var separation = Separation.Of(problem);
        var why =
            separation.IsSeparated
                ? $"keepers and rejects separate, so {string.Join(", ", separation.Columns.Select(c => c.Name))} have no finite estimate"
            : climb.End == AscentEnd.Flat ? "it rises towards a limit that no finite coefficients reach"
            : $"it still rose after {report.Iterations} steps";
        return new($"The likelihood has no maximum to report: {why}. Take the bias-reduced estimator, or fewer columns.", report);
    }
}
