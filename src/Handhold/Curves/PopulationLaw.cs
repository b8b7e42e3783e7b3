using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The rate averaged over all levels, each frame another one's on another day: what is doubted is the parameters only.</summary>
/// <remarks>At each point of the posterior the curve is averaged over the normal spread of log b, by Gauss-Hermite quadrature, and over that of half points and luck given log b, likewise.</remarks>
internal sealed class PopulationLaw : IExposureLaw
{
    private const double Sharpest = 0.005; // stops: a point is drawn this wide, so that distributions are smooth
    private const double Farthest = 60; // stops from the half point: no rate changes there any more
    private readonly ImmutableArray<(
        TermDraw Draw,
        ImmutableArray<(double At, double Weight)> HalfPoints,
        double Steepness,
        LevelsAnew Anew
    )> _points;

    private static GaussRule Steep { get; } = GaussRule.Hermite(9);

    private static GaussRule Shift { get; } = GaussRule.Hermite(31);

    private static GaussRule Effect { get; } = GaussRule.Hermite(7);

    internal PopulationLaw(VaryingPosterior posterior, Conditions conditions)
    {
        var setting = posterior.Moved.Read(conditions);
        var groupings = Enumerable.Range(0, posterior.Spreads.Length).ToLookup(g => posterior.EffectOf(g) is null);
        ImmutableArray<int> all = [.. groupings[true]];
        _points =
        [
            .. posterior.Draws.Select(d =>
                (
                    d.Typical,
                    HalfPoints(d),
                    Math.Exp(d.Typical.LogSteepness + setting.Steeper(d.Typical.Effects.AsSpan())),
                    LevelsAnew.Of(all, d.Loadings)
                )
            ),
        ];

        // Over what terms buy, where that varies and counts here; half points in order.
        ImmutableArray<(double, double)> HalfPoints(VaryingDraw draw)
        {
            List<(double[] Effects, double Weight)> some = [([.. draw.Typical.Effects], 1)];
            foreach (var g in groupings[false])
                if (posterior.EffectOf(g) is { } effect && setting.Weight(effect) != (0, 0))
                    some =
                    [
                        .. from one in some
                        from k in Enumerable.Range(0, Effect.Nodes.Length)
                        select (Moved(one.Effects, effect, draw.Loadings[g].Tau * Effect.Nodes[k]), one.Weight * Effect.Weights[k]),
                    ];
            return [.. some.Select(one => (setting.HalfPoint(draw.Typical.Tau0, one.Effects), one.Weight)).Order()];
        }

        static double[] Moved(double[] effects, int effect, double by)
        {
            double[] moved = [.. effects];
            moved[effect] += by;
            return moved;
        }
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
                        : Root.Of(x => rate - Rate(p, x).Keep, p.HalfPoints[0].At - Farthest, p.HalfPoints[^1].At + Farthest, 1e-6)
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
        (TermDraw Draw, ImmutableArray<(double At, double Weight)> HalfPoints, double Steepness, LevelsAnew Anew) point,
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
            foreach (var (halfPoint, share) in point.HalfPoints)
                for (var k = 0; k < Shift.Nodes.Length; k++)
                {
                    var (mu, oneMinusMu) = Elementary.Logistic(b * (halfPoint + mean + sd * Shift.Nodes[k] - exposure));
                    var weight = share * Steep.Weights[i] * Shift.Weights[k];
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
