using System.Globalization;

namespace Handhold;

/// <summary>A normal prior.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="StandardDeviation">Standard deviation, positive.</param>
public sealed record NormalPrior(double Mean, double StandardDeviation)
{
    /// <summary>As it is written: <c>normal(-6, 3)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"normal({Mean:0.####}, {StandardDeviation:0.####})");
}
