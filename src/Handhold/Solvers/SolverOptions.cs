namespace Handhold.Solvers;

/// <summary>How a maximum is searched.</summary>
public sealed record SolverOptions
{
    /// <summary>A linear contrast to hold; null for none.</summary>
    public Restriction? Held { get; init; }

    /// <summary>Steps allowed.</summary>
    public int Steps { get; init; } = 100;
}
