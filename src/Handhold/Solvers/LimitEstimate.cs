using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>The end of the likelihood's climb where keepers and rejects separate.</summary>
public sealed class LimitEstimate
{
    internal LimitEstimate(Separation separation, ImmutableArray<double?> coefficients, ImmutableArray<double?> standardErrors) =>
        (Separation, Coefficients, StandardErrors) = (separation, coefficients, standardErrors);

    /// <summary>Which columns diverge, and on which rows.</summary>
    public Separation Separation { get; }

    /// <summary>The limits; absent for the coefficients that the data leave without a finite one.</summary>
    public ImmutableArray<double?> Coefficients { get; }

    /// <summary>Standard errors of the finite limits, from the rows that overlap.</summary>
    public ImmutableArray<double?> StandardErrors { get; }

    /// <summary>The least upper bound of the log-likelihood.</summary>
    public double LogLikelihood { get; internal init; }

    /// <summary>Twice the log-likelihood lost against the rates k/n of the rows.</summary>
    public double Deviance { get; internal init; }
}
