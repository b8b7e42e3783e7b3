namespace Handhold.Solvers;

/// <summary>A solver stopped short of a maximum. The best point is attached.</summary>
public sealed class SolverException : Exception
{
    internal SolverException(string message, SolverReport report)
        : base(message) => Report = report;

    /// <summary>Where it stopped.</summary>
    public SolverReport Report { get; }
}
