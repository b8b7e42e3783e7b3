using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>What a clustered likelihood loses when a contrast of the coefficients, or the spread, is held.</summary>
internal sealed class ClusteredProfile : IProfile
{
    private const int Strides = 60;
    private readonly ClusteredFit _fit;
    private readonly IClusterLaw _law;
    private double[] _near;
    private readonly double _best;
    private ImmutableArray<double> _contrast;
    private ClusteredLikelihood _likelihood;

    internal ClusteredProfile(ClusteredFit fit, double level)
    {
        (_fit, _law) = (fit, fit.Law(fit.Nodes));
        (_near, _best, _contrast, _likelihood) = (fit.Top, fit.LogLikelihood, [], new(fit.Problem, fit.Design, _law, []));
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
    public double Excess(ImmutableArray<double> contrast, double value) => Excess(contrast, _ => (value, 0, 0));

    /// <summary>The same where what the contrast is held at depends on the spread.</summary>
    internal double Excess(ImmutableArray<double> contrast, HeldHeight height)
    {
        if (_contrast != contrast)
            (_contrast, _likelihood) = (contrast, new(_fit.Problem, _fit.Design, _law, contrast.AsSpan()));
        return Excess(new(_likelihood, height, _fit.IsEndless), _near);
    }

    /// <summary>The spreads that are not rejected; from zero where zero is one, without end where none is too large.</summary>
    internal (double Lower, double? Upper) SpreadInterval()
    {
        var (top, step) = (_fit.Spread, Bound * (_fit.SpreadError ?? 0.25));
        var lower = SpreadExcess(0) > 0 ? Root.Of(SpreadExcess, 0, top, 1e-12) : 0;
        if (_fit.IsEndless)
            return (lower, null);
        for (var (inside, tries) = (top, 0); tries < Strides; tries++, step *= 1.5)
        {
            if (SpreadExcess(inside + step) > 0)
                return (lower, Root.Of(SpreadExcess, inside, inside + step, 1e-12));
            inside += step;
        }
        return (lower, null);
    }

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
