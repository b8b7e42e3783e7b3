using System.Globalization;

namespace Handhold;

/// <summary>A log-normal prior.</summary>
/// <param name="Median">Median, positive.</param>
/// <param name="LogStandardDeviation">Standard deviation of the natural logarithm, positive.</param>
public sealed record LogNormalPrior(double Median, double LogStandardDeviation)
{
    /// <summary>As it is written: <c>lognormal(1.6, 0.35)</c>: median, sd of the natural logarithm.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"lognormal({Median:0.####}, {LogStandardDeviation:0.####})");
}
