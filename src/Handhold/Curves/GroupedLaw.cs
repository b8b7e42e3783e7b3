using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The rate of levels that are known, drawn anew, or averaged over.</summary>
/// <remarks>
/// On the link's scale the line is normal: m = x·b + the known levels' most likely effects, with the doubt on estimates and effects, and the spread s of what is drawn anew. Where
/// nothing is known the doubt is that of the profile: holding the line at η costs r standard deviations, and η is |η - m| / √((η - m)²/r² + s²) of them away, never more than r. The
/// mean rate is M(m, sd) over what is not known of the levels; the average over the population M(m, s) is doubted by the delta method.
/// </remarks>
internal sealed partial class GroupedLaw : ILineLaw
{
    private readonly CurveLikelihood _likelihood;
    private readonly GroupedFit _fit;
    private readonly ImmutableArray<double> _still;
    private readonly ImmutableArray<double> _moving;
    private readonly ImmutableArray<(int Part, int Level)> _known;
    private readonly ImmutableArray<int> _fresh;
    private readonly bool _isAverage;

    /// <param name="likelihood">A likelihood in which levels vary.</param>
    /// <param name="conditions">Where the terms stand.</param>
    /// <param name="known">Levels that are known.</param>
    /// <param name="fresh">Parts that are drawn anew; those neither known nor fresh are at zero.</param>
    /// <param name="isAverage">Whether the rate is averaged over what is drawn anew.</param>
    internal GroupedLaw(
        CurveLikelihood likelihood,
        Conditions conditions,
        ImmutableArray<(int Part, int Level)> known,
        ImmutableArray<int> fresh,
        bool isAverage = false
    )
    {
        (_likelihood, _fit, _known, _fresh, _isAverage) = (likelihood, likelihood.Grouped!.Fit, known, fresh, isAverage);
        (_still, _moving) = likelihood.Layout.Line(conditions);
    }

    /// <inheritdoc />
    public string Method =>
        _isAverage ? "delta"
        : _known.IsEmpty ? "predictive"
        : "conditional";

    /// <inheritdoc />
    public bool SharesLuck => false;

    private Link Link => _likelihood.Problem.Link;

    /// <inheritdoc />
    public double RateCdf(double exposure, double rate) => Normal.Cdf(-SignedRoot(exposure, rate));

    /// <inheritdoc />
    public double RateQuantile(double exposure, double p)
    {
        if (_isAverage)
            return p == 0.5 ? MeanRate(exposure) : RateSearch.Quantile(rate => RateCdf(exposure, rate), MeanRate(exposure), p);
        var at = At(exposure);
        if (p == 0.5)
            return RateOf(at.Predictor);
        return _known.IsEmpty
            ? RateSearch.Quantile(rate => RateCdf(exposure, rate), RateOf(at.Predictor), p)
            : RateOf(at.Predictor + Normal.Quantile(p) * at.Sd);
    }

    /// <inheritdoc />
    public double MeanRate(double exposure)
    {
        var at = At(exposure);
        return AveragedLink.At(Link, at.Predictor, at.Open).F;
    }

    /// <inheritdoc />
    public IBurstLaw BurstRates(double exposure)
    {
        var at = At(exposure);
        if (_isAverage || at.Open == 0)
        {
            var (keep, miss) = AveragedLink.At(Link, at.Predictor, at.Open);
            return new BurstRates([keep], [miss], [1]);
        }

        return Curves.BurstRates.OfNormalLuck(Link, at.Predictor, at.Open, 1, 0);
    }

    /// <inheritdoc />
    public IBurstsLaw Bursts(double exposure) => new FreshBursts(BurstRates(exposure));

    /// <inheritdoc />
    public double BurstCorrelation(double exposure) => 0;

    /// <inheritdoc />
    public double? InStops(double luck) => _likelihood.Dot(_moving) is { } slope and not 0 ? luck / Math.Abs(slope) : null;

    /// <inheritdoc />
    public double? Exposure(double rate)
    {
        if (!_likelihood.Layout.HasExposure)
            return null;
        var (low, high) = (-LineSet.Farthest, LineSet.Farthest);
        var (atLow, atHigh) = (Above(low), Above(high));
        return atLow > 0 == atHigh > 0 ? null : Root.Of(Above, (low, atLow), (high, atHigh), 1e-12);

        double Above(double exposure) => Predictor(exposure) - Height(exposure, rate);
    }

    /// <inheritdoc />
    public ExposureSet Set(double rate, double level, IntervalMethod method)
    {
        var made = _known.IsEmpty && !_isAverage ? IntervalMethod.Profile : IntervalMethod.Fieller;
        return _likelihood.Layout.HasExposure
            ? LineSet.ByRoots(Exposure(rate), exposure => SignedRoot(exposure, rate), level, made)
            : LineSet.NotReachable(made);
    }

    /// <summary>The sd in stops of the exposure with a rate between levels drawn anew: their spread there over the slope; null where the line has none.</summary>
    internal double? SpreadInStops(double rate) => Exposure(rate) is { } exposure ? InStops(Fresh(Row(exposure))) : null;

    // How many standard deviations a rate lies below the line.
    private double SignedRoot(double exposure, double rate)
    {
        if (rate is <= 0 or >= 1)
            return rate <= 0 ? double.PositiveInfinity : double.NegativeInfinity;
        if (_isAverage)
            return (Predictor(exposure) - Height(exposure, rate)) / AverageError(exposure, rate);
        var (at, height) = (At(exposure), Links.Inverse(Link, rate));
        var above = at.Predictor - height;
        if (!_known.IsEmpty)
            return above / at.Sd;
        var root = _likelihood.LossRootOf(Row(exposure), height);
        return above == 0 || root == 0 ? 0 : Math.Sign(above) / Math.Sqrt(1 / (root * root) + at.Fresh * at.Fresh / (above * above));
    }

    private double RateOf(double predictor) => Links.At(Link, predictor).F;

    // Where the predictor must be for a rate.
    private double Height(double exposure, double rate) =>
        _isAverage ? AveragedLink.Height(Link, rate, Fresh(Row(exposure))).Eta : Links.Inverse(Link, rate);

    private double Predictor(double exposure) => _fit.Predictor(Row(exposure).AsSpan(), _known.AsSpan());

    /// <summary>The line: its place, the spread of what is drawn anew, the sd of what is open of the levels, and the sd of all that is not known.</summary>
    private (double Predictor, double Fresh, double Open, double Sd) At(double exposure)
    {
        var row = Row(exposure);
        var (predictor, open, doubt) = _fit.Modes.Predict(row.AsSpan(), _known.AsSpan());
        var fresh = Fresh(row);
        return (predictor, fresh, Math.Sqrt(open + fresh * fresh), Math.Sqrt(open + doubt + fresh * fresh));
    }

    private double Fresh(ImmutableArray<double> row)
    {
        var variance = 0.0;
        foreach (var part in _fresh)
        {
            var loading = _fit.Loading(part, row.AsSpan());
            variance += Orthonormal.Dot(loading, loading);
        }

        return Math.Sqrt(variance);
    }

    // Of m - H(rate, s), whose H moves with the spread.
    private double AverageError(double exposure, double rate)
    {
        var row = Row(exposure);
        var spread = Fresh(row);
        var slope = new double[_fit.Top.Length];
        row.CopyTo(slope);
        _fit.Design.ToContrast(slope.AsSpan(0, row.Length));
        if (spread > 0)
        {
            var move = AveragedLink.Height(Link, rate, spread).Slope;
            foreach (var part in _fresh)
                _fit.AddSlope(part, row.AsSpan(), -move / spread, slope);
        }

        return Math.Sqrt(_fit.Variance(slope));
    }

    private ImmutableArray<double> Row(double exposure) => [.. _still.Zip(_moving, (still, moving) => still + exposure * moving)];
}
