using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>What a grouped likelihood loses when a contrast of the coefficients, or the sd of one effect, is held.</summary>
internal sealed class GroupedProfile(GroupedFit fit, double level, CancellationToken cancellation = default)
    : InnerProfile(fit.Estimate, level)
{
    private const int Steps = 200;

    // A decrement d leaves about d²/2 to climb.
    private const double Close = 1e-6;

    // Spreads that are none at the top start from here: none may not be best where something is held.
    private const double Some = 0.1;

    private ImmutableArray<double> _contrast = [];
    private IGroupedLikelihood? _likelihood;
    private double[] _near = [];
    private double[] _curvature = [];

    /// <inheritdoc />
    public override double Excess(ImmutableArray<double> contrast, double value)
    {
        if (_contrast != contrast)
        {
            _contrast = contrast;
            Stand(fit.Likelihood(contrast.AsSpan(), fit.Bases), [.. fit.Top]);
        }
        return Excess(0, value / _likelihood!.Basis.Length);
    }

    /// <summary>The sds of an effect that are not rejected; from zero where zero is one, without end where none is too large.</summary>
    internal (double Lower, double? Upper) SpreadInterval(int grouping, int effect)
    {
        var effects = fit.Problem.Effects[grouping];
        var basis = EffectBasis.First(effects, fit.Problem.Centre(effects.Columns[^1]), effect);
        double[] top = [.. fit.Top];
        var place = fit.SpreadsOf(grouping);
        basis.Lambda(fit.Loadings(grouping)).CopyTo(top, place);
        _contrast = [];
        Stand(fit.Likelihood([], fit.Bases.SetItem(grouping, basis)), top);
        var (spread, error) = fit.SpreadOf(grouping, effect);
        return Spreads(Held, spread, error);

        double Held(double at) => Excess(place, at);
    }

    // At the top, in the likelihood's coordinates.
    private void Stand(IGroupedLikelihood likelihood, double[] top)
    {
        likelihood.Basis.Turn(top.AsSpan(0, likelihood.Basis.Columns));
        (_likelihood, _near, _curvature) = (likelihood, top, fit.CurvatureAt(likelihood, top, cancellation));
        foreach (var spread in fit.Nothing)
            if (fit.IsOwnSpread(spread) && top[spread] == 0)
                top[spread] = Some;
    }

    private double Excess(int place, double value)
    {
        double[] start = [.. _near];
        start[place] = value;
        GroupedClimb climb = new(_likelihood!, start, [.. _curvature], place);
        climb.Climb(Close, Steps, cancellation);
        if (climb.Decrement > 1e-3 && !(climb.LogLikelihood + climb.Decrement * climb.Decrement < fit.LogLikelihood - 0.5 * Bound * Bound))
            throw new SolverException(
                "A fit with levels that vary and a number held stopped short. Its best point is attached.",
                new(Estimate.Coefficients, climb.LogLikelihood, climb.Taken, climb.Decrement)
            );
        _near = climb.Point;
        return Math.Sqrt(2 * Math.Max(0, fit.LogLikelihood - climb.LogLikelihood)) - Bound;
    }
}
