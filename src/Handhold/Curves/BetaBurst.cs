using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>Keepers of one burst whose frames share a rate drawn from a beta distribution.</summary>
/// <param name="rate">Its mean.</param>
/// <param name="correlation">Correlation of two frames, above 0 and below 1.</param>
internal sealed class BetaBurst(double rate, double correlation) : IBurstLaw
{
    private readonly double _a = rate * (1 - correlation) / correlation;
    private readonly double _b = (1 - rate) * (1 - correlation) / correlation;

    /// <inheritdoc />
    public double AtLeast(int keepers, int frames) => BetaBinomial.Tails(keepers, frames, _a, _b).AtLeast;

    /// <inheritdoc />
    public double Exactly(int keepers, int frames) =>
        keepers < 0 || keepers > frames ? 0 : Math.Exp(BetaBinomial.LogMass(keepers, frames, _a, _b));
}
