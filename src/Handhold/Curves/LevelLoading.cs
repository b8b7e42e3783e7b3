namespace Handhold.Curves;

/// <summary>What the standard normal numbers (z0, z1) of a level do to its curve: tau grows by Tau z0, log b by Steep0 z0 + Steep1 z1.</summary>
/// <param name="Tau">Standard deviation of half points between levels, stops.</param>
/// <param name="Steep0">Correlation times the standard deviation of log b.</param>
/// <param name="Steep1">What is left of the standard deviation of log b.</param>
/// <param name="Dimension">How many of the numbers count, 1 or 2.</param>
internal readonly record struct LevelLoading(double Tau, double Steep0, double Steep1, int Dimension)
{
    internal double LogB => Math.Sqrt(Steep0 * Steep0 + Steep1 * Steep1);

    internal double Correlation => Tau * LogB > 0 ? Steep0 / LogB : 0;

    internal static LevelLoading Of(double? tau, double? logB, double correlation) =>
        tau is null ? new(0, logB!.Value, 0, 1)
        : logB is null ? new(tau.Value, 0, 0, 1)
        : new(tau.Value, correlation * logB.Value, Math.Sqrt(1 - correlation * correlation) * logB.Value, 2);

    internal double Shift(ReadOnlySpan<double> z) => Tau * z[0];

    internal double Steepening(ReadOnlySpan<double> z) => Steep0 * z[0] + (Dimension == 2 ? Steep1 * z[1] : 0);
}
