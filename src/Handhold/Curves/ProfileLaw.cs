using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The confidence that a likelihood gives in rates along exposures under some conditions.</summary>
/// <remarks>
/// With r the signed root of twice the log-likelihood lost by holding the rate, the confidence that the rate is lower is Φ(-r): its (1 ± level)/2
/// quantiles are the ends of the profile interval. Source: Barndorff-Nielsen and Cox (1994), Inference and Asymptotics, 3.4.
/// </remarks>
internal sealed partial class ProfileLaw : ILineLaw
{
    private const double Farthest = 1000; // beyond that, 2^x seconds are no number
    private readonly ImmutableArray<double> _still;
    private readonly ImmutableArray<double> _moving;

    internal ProfileLaw(CurveLikelihood likelihood, Conditions conditions)
    {
        Likelihood = likelihood;
        (_still, _moving) = likelihood.Layout.Line(conditions);
    }

    internal CurveLikelihood Likelihood { get; }

    /// <inheritdoc />
    public string Method => "profile";

    /// <inheritdoc />
    public double RateCdf(double exposure, double rate) => Normal.Cdf(-SignedRoot(exposure, rate));

    /// <inheritdoc />
    public double RateQuantile(double exposure, double p)
    {
        if (p == 0.5)
            return MeanRate(exposure);
        if (!Likelihood.RateIsHeight)
            return RateSearch.Quantile(rate => RateCdf(exposure, rate), MeanRate(exposure), p);
        var level = Math.Abs(1 - 2 * p);
        var interval = ProfileInterval.Of(Likelihood.ProfileAt(level), Row(exposure), level);
        return p < 0.5
            ? Likelihood.RateOf(interval.Lower ?? double.NegativeInfinity)
            : Likelihood.RateOf(interval.Upper ?? double.PositiveInfinity);
    }

    /// <inheritdoc />
    public double MeanRate(double exposure) => Likelihood.Value(Row(exposure)) is { } eta ? Likelihood.RateOf(eta) : double.NaN;

    /// <inheritdoc />
    public IBurstLaw BurstRates(double exposure)
    {
        var rate = MeanRate(exposure);
        return Likelihood.Shared is not { Spread: > 0 } shared ? new BurstRates([rate], [1 - rate], [1])
            : shared.Luck == SharedLuck.BetaRates ? new BetaBurst(rate, BetaRates.Correlation(shared.Spread))
            : Curves.BurstRates.OfNormalLuck(
                Likelihood.Problem.Link,
                Likelihood.Dot(Row(exposure)) ?? double.NaN,
                shared.Spread,
                Likelihood.Ceiling,
                Likelihood.Floor
            );
    }

    /// <inheritdoc />
    public bool SharesLuck => Likelihood.Shared is { Spread: > 0 };

    /// <inheritdoc />
    public IBurstsLaw Bursts(double exposure) => new FreshBursts(BurstRates(exposure));

    /// <inheritdoc />
    public double BurstCorrelation(double exposure) =>
        Likelihood.Shared is not { Spread: > 0 } shared ? 0
        : shared.Luck == SharedLuck.BetaRates ? BetaRates.Correlation(shared.Spread)
        : AveragedLink.Correlation(
            Likelihood.Problem.Link,
            Likelihood.Dot(Row(exposure)) ?? double.NaN,
            shared.Spread,
            Likelihood.Ceiling,
            Likelihood.Floor
        );

    /// <inheritdoc />
    public double? InStops(double luck) => Likelihood.Dot(_moving) is { } slope and not 0 ? luck / Math.Abs(slope) : null;

    /// <summary>Positive where the estimated rate at an exposure is above <paramref name="rate"/>.</summary>
    internal double SignedRoot(double exposure, double rate) => Likelihood.SignedRoot(Row(exposure), rate);

    /// <inheritdoc />
    public double? Exposure(double rate) =>
        Likelihood.PredictorOf(rate) is { } eta
        && Likelihood.Dot(_still) is { } height
        && Likelihood.Dot(_moving) is { } slope and not 0
        && (eta - height) / slope is var exposure
        && Math.Abs(exposure) < Farthest
            ? exposure
            : null;

    /// <inheritdoc />
    public ExposureSet Set(double rate, double level, IntervalMethod method) =>
        Likelihood.PredictorOf(rate) is not { } eta || !Likelihood.Layout.HasExposure ? LineSet.NotReachable(method)
        : method != IntervalMethod.Profile ? LineSet.FromCovariance(Likelihood, _still, _moving, eta, level, method)
        : !Likelihood.RateIsHeight ? LineSet.ByRoots(Exposure(rate), x => SignedRoot(x, rate), level, method)
        : LineSet.From(ProfileSet.Of(Likelihood.ProfileAt(level), _still, _moving, eta, level));

    private ImmutableArray<double> Row(double exposure) => [.. _still.Zip(_moving, (still, moving) => still + exposure * moving)];
}
