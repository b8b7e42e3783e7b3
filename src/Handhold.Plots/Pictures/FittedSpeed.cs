namespace Handhold.Plots;

/// <summary>One speed.</summary>
/// <param name="Log2Seconds">The exposure.</param>
/// <param name="Rate">Keepers over frames.</param>
/// <param name="Lower">Lower end of its interval.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Fitted">Rate fitted; null where there is none.</param>
/// <param name="Expected">Rate that the other speeds lead to expect; null where there is none.</param>
internal sealed record FittedSpeed(double Log2Seconds, double Rate, double Lower, double Upper, double? Fitted, double? Expected)
{
    /// <summary>Points of per cent above what is expected.</summary>
    public double? Gap => 100 * (Rate - Expected);
}
