namespace Handhold.Curves;

/// <summary>The distribution of a half point, log2 seconds.</summary>
internal abstract class HalfPoint
{
    /// <summary>Nothing lies below.</summary>
    internal abstract double Low { get; }

    /// <summary>Nothing lies above.</summary>
    internal abstract double High { get; }

    /// <summary>P(half point at most <paramref name="t"/>).</summary>
    internal abstract double Cdf(double t);

    /// <summary>This half point plus an independent normal shift.</summary>
    internal abstract HalfPoint Shifted(double sd);

    /// <summary>Masses of a trapezoid rule no coarser than a step, and where its first node lies.</summary>
    internal abstract (double Start, double Step, ReadOnlyMemory<double> Masses) Nodes(double coarsest = double.PositiveInfinity);
}
