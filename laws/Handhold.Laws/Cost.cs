namespace Handhold.Laws;

/// <summary>What the library asks beside an oracle; NaN where no assurance that was asked keeps just so much.</summary>
/// <param name="Kept">Share kept by both.</param>
/// <param name="Library">Geometric mean of the library's frames.</param>
/// <param name="Oracle">The oracle's.</param>
/// <param name="Error">Monte Carlo error of the ratio.</param>
internal readonly record struct Cost(double Kept, double Library, double Oracle, double Error)
{
    internal double Ratio => Library / Oracle;
}
