namespace Handhold;

/// <summary>An answer depends on a condition that was not stated, or stated as something that no frame had.</summary>
public sealed class ConditionsException : ArgumentException
{
    internal ConditionsException(string term, string problem, string remedy)
        : base($"{problem} {remedy}") => (Term, Problem, Remedy) = (term, problem, remedy);

    /// <summary>The term that needs it.</summary>
    public string Term { get; }

    /// <summary>What is wrong.</summary>
    public string Problem { get; }

    /// <summary>What to do.</summary>
    public string Remedy { get; }
}
