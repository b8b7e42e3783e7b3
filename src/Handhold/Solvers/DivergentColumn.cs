namespace Handhold.Solvers;

/// <summary>A coefficient that the likelihood leaves without a finite limit.</summary>
public sealed class DivergentColumn
{
    internal DivergentColumn(int index, string name, int sign) => (Index, Name, Sign) = (index, name, sign);

    /// <summary>Its place among the columns.</summary>
    public int Index { get; }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>+1: grows without bound. -1: falls without bound. 0: may do either, or stay.</summary>
    public int Sign { get; }
}
