using System.Globalization;

namespace Handhold;

/// <summary>A beta prior.</summary>
/// <param name="A">First shape, positive.</param>
/// <param name="B">Second shape, positive.</param>
public sealed record BetaPrior(double A, double B)
{
    /// <summary>As it is written: <c>beta(1.2, 38.8)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"beta({A:0.####}, {B:0.####})");
}
