using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>Keepers of one burst whose frames share a rate drawn from a beta distribution.</summary>
/// <param name="rate">Its mean.</param>
/// <param name="correlation">Correlation of two frames, above 0 and below 1.</param>
internal sealed class BetaBurst(double rate, double correlation) : IBurstLaw
{
    private readonly (double A, double B) _shapes = BetaBinomial.Shapes(rate, 1 - rate, correlation);

    /// <inheritdoc />
    public double AtLeast(int keepers, int frames) => BetaBinomial.Tails(keepers, frames, _shapes.A, _shapes.B).AtLeast;

    /// <inheritdoc />
    public double Exactly(int keepers, int frames) =>
        keepers < 0 || keepers > frames ? 0 : Math.Exp(BetaBinomial.LogMass(keepers, frames, _shapes.A, _shapes.B));
}
