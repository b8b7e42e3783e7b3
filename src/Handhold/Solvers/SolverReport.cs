using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Where a solver ended.</summary>
public sealed class SolverReport
{
    internal SolverReport(ImmutableArray<double> coefficients, double objective, int iterations, double decrement) =>
        (Coefficients, Objective, Iterations, Decrement) = (coefficients, objective, iterations, decrement);

    /// <summary>The best point found.</summary>
    public ImmutableArray<double> Coefficients { get; }

    /// <summary>What was maximised, there.</summary>
    public double Objective { get; }

    /// <summary>Steps taken.</summary>
    public int Iterations { get; }

    /// <summary>Length of the last full step in standard errors; free of units and scales.</summary>
    public double Decrement { get; }
}
