using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The rate averaged over all levels, each frame another one's on another day: what is doubted is the parameters only.</summary>
/// <remarks>At each point of the posterior the curve is averaged over the normal spread of log b, by Gauss-Hermite quadrature, and over that of half points and luck given log b, likewise.</remarks>
internal sealed class PopulationLaw : IExposureLaw
{
    private const double Sharpest = 0.005; // stops: a point is drawn this wide, so that distributions are smooth
    private const double Farthest = 60; // stops from the half point: no rate changes there any more
    private readonly ImmutableArray<(TermDraw Draw, double HalfPoint, double Steepness, LevelsAnew Anew)> _points;

    private static GaussRule Steep { get; } = GaussRule.Hermite(9);

    private static GaussRule Shift { get; } = GaussRule.Hermite(31);

    internal PopulationLaw(VaryingPosterior posterior, Conditions conditions)
    {
        var setting = posterior.Moved.Read(conditions);
        var all = Enumerable.Range(0, posterior.Spreads.Length).ToImmutableArray();
        _points =
        [
            .. posterior.Draws.Select(d =>
                (
                    d.Typical,
                    setting.HalfPoint(d.Typical.Tau0, d.Typical.Effects.AsSpan()),
                    Math.Exp(d.Typical.LogSteepness + setting.Steeper(d.Typical.Effects.AsSpan())),
                    LevelsAnew.Of(all, d.Loadings)
                )
            ),
        ];
    }

    /// <inheritdoc />
    public bool SharesLuck => false;

    /// <inheritdoc />
    public HalfPointMixture ExposureFor(double rate) =>
        new([
            .. _points
                .AsParallel()
                .AsOrdered()
                .Select(p => new MixturePart(
                    p.Draw.Weight,
                    new NormalHalfPoint(0, Sharpest),
                    rate >= p.Draw.Ceiling ? double.NegativeInfinity
                        : rate <= p.Draw.Floor ? double.PositiveInfinity
                        : Root.Of(x => rate - Rate(p, x).Keep, p.HalfPoint - Farthest, p.HalfPoint + Farthest, 1e-6)
                )),
        ]);

    /// <inheritdoc />
    public double RateCdf(double exposure, double rate) => Rates(exposure).Below(rate);

    /// <inheritdoc />
    public double RateQuantile(double exposure, double p) => Rates(exposure).Quantile(p);

    /// <inheritdoc />
    public double MeanRate(double exposure) => Rates(exposure).Mean;

    /// <inheritdoc />
    public IBurstLaw BurstRates(double exposure)
    {
        (double Keep, double Miss)[] rates = [.. _points.Select(p => Rate(p, exposure))];
        return new BurstRates([.. rates.Select(r => r.Keep)], [.. rates.Select(r => r.Miss)], [.. _points.Select(p => p.Draw.Weight)]);
    }

    /// <inheritdoc />
    public IBurstsLaw Bursts(double exposure) => new FreshBursts(BurstRates(exposure));

    /// <inheritdoc />
    public double BurstCorrelation(double exposure) => 0;

    private WeightedValues Rates(double exposure) => new([.. _points.Select(p => (Rate(p, exposure).Keep, p.Draw.Weight))]);

    private static (double Keep, double Miss) Rate(
        (TermDraw Draw, double HalfPoint, double Steepness, LevelsAnew Anew) point,
        double exposure
    )
    {
        var (draw, anew) = (point.Draw, point.Anew);
        var sd = Math.Sqrt(anew.ShiftSd * anew.ShiftSd + draw.SessionSd * draw.SessionSd + draw.BurstSd * draw.BurstSd);
        var (keep, miss) = (0.0, 0.0);
        for (var i = 0; i < Steep.Nodes.Length; i++)
        {
            var (mean, steepening) = anew.At(Steep.Nodes[i]);
            var b = point.Steepness * Math.Exp(steepening);
            for (var k = 0; k < Shift.Nodes.Length; k++)
            {
                var (mu, oneMinusMu) = Elementary.Logistic(b * (point.HalfPoint + mean + sd * Shift.Nodes[k] - exposure));
                var weight = Steep.Weights[i] * Shift.Weights[k];
                keep += weight * mu;
                miss += weight * oneMinusMu;
            }

            if (anew.LogB == 0)
                return Between(keep / Steep.Weights[i], miss / Steep.Weights[i]);
        }

        return Between(keep, miss);

        (double, double) Between(double mu, double oneMinusMu) =>
            (draw.Floor + (draw.Ceiling - draw.Floor) * mu, 1 - draw.Ceiling + (draw.Ceiling - draw.Floor) * oneMinusMu);
    }
}
