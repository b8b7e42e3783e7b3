namespace Handhold;

/// <summary>Counts or conditions of a cell that cannot be.</summary>
public sealed class CellException : ArgumentException
{
    internal CellException(string place, string problem, string remedy)
        : base($"{place}: {problem} {remedy}") => (Place, Problem, Remedy) = (place, problem, remedy);

    /// <summary>Where it is wrong: the cell and its speed, or the column of a condition.</summary>
    public string Place { get; }

    /// <summary>What is wrong, with the value.</summary>
    public string Problem { get; }

    /// <summary>What to do.</summary>
    public string Remedy { get; }
}
