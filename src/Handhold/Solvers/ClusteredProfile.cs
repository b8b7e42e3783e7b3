using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>What a clustered likelihood loses when a contrast of the coefficients, or the spread, is held.</summary>
internal sealed class ClusteredProfile : InnerProfile
{
    private readonly ClusteredFit _fit;
    private readonly IClusterLaw _law;
    private double[] _near;
    private readonly double _best;
    private ImmutableArray<double> _contrast;
    private ClusteredLikelihood _likelihood;

    internal ClusteredProfile(ClusteredFit fit, double level)
        : base(fit.Estimate, level)
    {
        (_fit, _law) = (fit, fit.Law(fit.Nodes));
        (_near, _best, _contrast, _likelihood) = (fit.Top, fit.LogLikelihood, [], new(fit.Problem, fit.Design, _law, []));
    }

    /// <inheritdoc />
    public override double Excess(ImmutableArray<double> contrast, double value) => Excess(contrast, _ => (value, 0, 0));

    /// <summary>The same where what the contrast is held at depends on the spread.</summary>
    internal double Excess(ImmutableArray<double> contrast, HeldHeight height)
    {
        if (_contrast != contrast)
            (_contrast, _likelihood) = (contrast, new(_fit.Problem, _fit.Design, _law, contrast.AsSpan()));
        return Excess(new(_likelihood, height, _fit.IsEndless), _near);
    }

    /// <summary>The spreads that are not rejected; from zero where zero is one, without end where none is too large.</summary>
    internal (double Lower, double? Upper) SpreadInterval() => Spreads(SpreadExcess, _fit.Spread, _fit.SpreadError, _fit.IsEndless);

    private double SpreadExcess(double spread)
    {
        if (!_contrast.IsEmpty)
            (_contrast, _likelihood) = ([], new(_fit.Problem, _fit.Design, _law, []));
        return Excess(new(_likelihood, null, true), [.. _near.AsSpan(0, _near.Length - 1), spread]);
    }

    private double Excess(ClusteredClimb climb, double[] start)
    {
        start.CopyTo(climb.Theta, 0);
        _likelihood.Turn(climb.Theta.AsSpan(0, _likelihood.Columns));
        // A Newton decrement d leaves about d²/2 to climb: too little to come inside.
        if (!climb.Climb() && !(climb.LogLikelihood + climb.Decrement * climb.Decrement < _best - 0.5 * Bound * Bound))
            throw new SolverException(
                "A fit with shared luck and a contrast held stopped short. Its best point is attached.",
                new(Estimate.Coefficients, climb.LogLikelihood, climb.Taken, climb.Decrement)
            );
        _near = [.. climb.Theta];
        _likelihood.Turn(_near.AsSpan(0, _likelihood.Columns));
        return Math.Sqrt(2 * Math.Max(0, _best - climb.LogLikelihood)) - Bound;
    }
}
