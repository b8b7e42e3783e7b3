namespace Handhold.Solvers;

/// <summary>A log-likelihood of coefficients in turned orthonormal columns, then spreads.</summary>
internal interface IGroupedLikelihood
{
    /// <summary>Coefficients and spreads together.</summary>
    int Size { get; }

    /// <summary>The columns, turned.</summary>
    TurnedDesign Basis { get; }

    /// <summary>The value at a point and, written, its gradient; negative infinity, the gradient void, where there is none.</summary>
    double At(ReadOnlySpan<double> point, Span<double> gradient);
}
