namespace Handhold.Solvers;

/// <summary>Maximises likelihoods of <see cref="BinomialProblem"/>s.</summary>
public static class BinomialSolver
{
    /// <summary>Maximum likelihood, of an estimated ceiling and floor too.</summary>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    /// <exception cref="SolverException">No finite maximum: ask <see cref="Separation"/> first; or the steps ran out.</exception>
    public static BinomialEstimate Likelihood(BinomialProblem problem, SolverOptions? options = null) => throw new NotSupportedException();

    /// <summary>Maximum of the likelihood penalised by Jeffreys' prior; finite for every design of full rank.</summary>
    /// <exception cref="ArgumentException">Ceiling or floor is to be estimated: only the likelihood can.</exception>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    /// <exception cref="SolverException">The steps ran out.</exception>
    public static BinomialEstimate BiasReduced(BinomialProblem problem, SolverOptions? options = null) => throw new NotSupportedException();

    /// <summary>Where the likelihood goes when keepers and rejects separate: its least upper bound and the coefficients that stay finite.</summary>
    /// <remarks>Equals the maximum where it is finite.</remarks>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    /// <exception cref="SolverException">The verdict on separation is unknown, or the solver stopped short on the rows that overlap.</exception>
    public static LimitEstimate Limit(BinomialProblem problem) => throw new NotSupportedException();
}
