using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>What a grouped likelihood loses when a contrast of the coefficients, or the sd of one effect, is held.</summary>
internal sealed class GroupedProfile : IProfile
{
    private const int Strides = 60;
    private const int Steps = 200;

    // A decrement d leaves about d²/2 to climb.
    private const double Close = 1e-6;

    // Spreads that are none at the top start from here: none may not be best where something is held.
    private const double Some = 0.1;

    private readonly GroupedFit _fit;
    private ImmutableArray<double> _contrast = [];
    private IGroupedLikelihood? _likelihood;
    private double[] _near = [];
    private double[] _curvature = [];

    internal GroupedProfile(GroupedFit fit, double level)
    {
        _fit = fit;
        Bound = -Normal.Quantile((1 - level) / 2);
    }

    /// <inheritdoc />
    public double Bound { get; }

    /// <inheritdoc />
    public BinomialEstimate Estimate => _fit.Estimate;

    /// <inheritdoc />
    public bool Moved { get; set; }

    /// <inheritdoc />
    public Cone? Cone => null;

    /// <inheritdoc />
    public double Limit(ImmutableArray<double> contrast) => Orthonormal.Dot(contrast.AsSpan(), Estimate.Coefficients.AsSpan());

    /// <inheritdoc />
    public double Step(ImmutableArray<double> contrast) => Bound * Estimate.StandardError(contrast);

    /// <inheritdoc />
    public double Excess(ImmutableArray<double> contrast, double value)
    {
        if (_contrast != contrast)
        {
            _contrast = contrast;
            Stand(_fit.Likelihood(contrast.AsSpan(), _fit.Bases), [.. _fit.Top]);
        }
        return Excess(0, value / _likelihood!.Basis.Length);
    }

    /// <summary>The sds of an effect that are not rejected; from zero where zero is one, without end where none is too large.</summary>
    internal (double Lower, double? Upper) SpreadInterval(int grouping, int effect)
    {
        var effects = _fit.Problem.Effects[grouping];
        var basis = EffectBasis.First(effects, _fit.Problem.Centre(effects.Columns[^1]), effect);
        double[] top = [.. _fit.Top];
        var place = _fit.SpreadsOf(grouping);
        basis.Lambda(_fit.Loadings(grouping)).CopyTo(top, place);
        _contrast = [];
        Stand(_fit.Likelihood([], _fit.Bases.SetItem(grouping, basis)), top);
        var (spread, error) = _fit.SpreadOf(grouping, effect);
        var lower = spread > 0 && Held(0) > 0 ? Root.Of(Held, 0, spread, 1e-10) : 0;
        var step = Bound * (error ?? 0.25);
        for (var (inside, tries) = (spread, 0); tries < Strides; tries++, step *= 1.5)
        {
            if (Held(inside + step) > 0)
                return (lower, Root.Of(Held, inside, inside + step, 1e-10));
            inside += step;
        }
        return (lower, null);

        double Held(double at) => Excess(place, at);
    }

    // At the top, in the likelihood's coordinates.
    private void Stand(IGroupedLikelihood likelihood, double[] top)
    {
        likelihood.Basis.Turn(top.AsSpan(0, likelihood.Basis.Columns));
        (_likelihood, _near, _curvature) = (likelihood, top, _fit.CurvatureAt(likelihood, top));
        foreach (var spread in _fit.Nothing)
            if (_fit.IsOwnSpread(spread) && top[spread] == 0)
                top[spread] = Some;
    }

    private double Excess(int place, double value)
    {
        double[] start = [.. _near];
        start[place] = value;
        GroupedClimb climb = new(_likelihood!, start, [.. _curvature], place);
        climb.Climb(Close, Steps);
        if (climb.Decrement > 1e-3 && !(climb.LogLikelihood + climb.Decrement * climb.Decrement < _fit.LogLikelihood - 0.5 * Bound * Bound))
            throw new SolverException(
                "A fit with levels that vary and a number held stopped short. Its best point is attached.",
                new(Estimate.Coefficients, climb.LogLikelihood, climb.Taken, climb.Decrement)
            );
        _near = climb.Point;
        return Math.Sqrt(2 * Math.Max(0, _fit.LogLikelihood - climb.LogLikelihood)) - Bound;
    }
}
