namespace Handhold;

/// <summary>Counts or conditions of a cell that cannot be.</summary>
public sealed class CellException : ArgumentException
{
    internal CellException(string cell, string problem, string remedy)
        : base($"{cell}: {problem} {remedy}") => (Problem, Remedy) = (problem, remedy);

    /// <summary>What is wrong, with the value.</summary>
    public string Problem { get; }

    /// <summary>What to do.</summary>
    public string Remedy { get; }
}
