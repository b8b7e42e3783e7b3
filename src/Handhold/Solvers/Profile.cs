using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>What an objective loses when a contrast is held.</summary>
internal sealed class Profile : IProfile
{
    // From far away a complementary log-log falls by one a step.
    private const int Steps = 1000;

    private readonly BinomialProblem _problem;
    private readonly BinomialEstimator _estimator;
    private readonly OrthonormalDesign _design;
    private readonly LimitFit? _limit;
    private ClimbStart _top;
    private ClimbStart _near;
    private Restriction? _last;
    private (double Value, double[] Theta)? _before;
    private double _best;

    internal Profile(BinomialProblem problem, BinomialEstimator estimator, double level)
    {
        if (!(level is > 0 and < 1))
            throw new ArgumentOutOfRangeException(
                nameof(level),
                FormattableString.Invariant($"A level of {level} is not between 0 and 1. Use, say, 0.95.")
            );
        (_problem, _estimator, _design) = (problem.Checked(), estimator, OrthonormalDesign.Of(problem));
        Bound = -Normal.Quantile((1 - level) / 2);
        if (estimator == BinomialEstimator.Likelihood && Separation.Of(problem).IsSeparated)
        {
            _limit = new(problem);
            _best = _limit.Objective;
            Estimate = BinomialSolver.BiasReduced(problem with { Ceiling = problem.Ceiling ?? 1, Floor = problem.Floor ?? 0 });
            Cone = new(problem, _design);
            return;
        }
        (Estimate, _best) = Top();
    }

    /// <inheritdoc />
    public double Bound { get; }

    /// <inheritdoc />
    public BinomialEstimate Estimate { get; private set; }

    /// <inheritdoc />
    public bool Moved { get; set; }

    /// <inheritdoc />
    public Cone? Cone { get; }

    /// <inheritdoc />
    public double Limit(ImmutableArray<double> contrast) => Orthonormal.Dot(contrast.AsSpan(), _limit!.Solution);

    /// <inheritdoc />
    /// <remarks>Half the Wald interval, unless that moves a row's predictor by more than thirty.</remarks>
    public double Step(ImmutableArray<double> contrast)
    {
        var weights = contrast.ToArray();
        _design.ToContrast(weights);
        var most = 0.0;
        for (var i = 0; i < _design.Rows; i++)
        {
            var moved = 0.0;
            for (var j = 0; j < _design.Columns; j++)
                moved += weights[j] * _design.Q[j * _design.Rows + i];
            most = Math.Max(most, Math.Abs(moved));
        }
        return Math.Min(Bound * Estimate.StandardError(contrast), 30 * Orthonormal.Dot(weights, weights) / most);
    }

    /// <inheritdoc />
    public double Excess(ImmutableArray<double> contrast, double value)
    {
        var lost = _best - (_limit is null ? Held(new(contrast, value)) : new LimitFit(_problem.Reduced(contrast, value)).Objective);
        return Math.Sqrt(Math.Max(0, 2 * lost)) - Bound;
    }

    // From where the last contrasts held ended; should that stop short, by way of the contrast half way.
    private double Held(Restriction held, int halvings = 8)
    {
        var climb = HighestClimb.Of(_estimator, _problem, _design, new() { Held = held, Steps = Steps }, Ahead(held), _near, _top);
        // A Newton decrement d leaves about d²/2 to climb: too little to tell, or too little to come inside.
        var left = climb.Ascent.Decrement * climb.Ascent.Decrement;
        var stopped = climb.End == AscentEnd.Stalled && !(left < 1e-8 || climb.Ascent.Objective + left < _best - 0.5 * Bound * Bound);
        if (stopped && halvings > 0 && _last is { } last)
        {
            Held(new([.. last.Contrast.Zip(held.Contrast, (a, b) => (a + b) / 2)], (last.Value + held.Value) / 2), halvings - 1);
            return Held(held, halvings - 1);
        }
        if (stopped)
            throw new SolverException(
                FormattableString.Invariant($"The fit with a contrast held at {held.Value} stopped short. Its best point is attached."),
                climb.Ascent.Report()
            );
        _before = _last?.Contrast.SequenceEqual(held.Contrast) == true ? (_last.Value, _near.Theta) : null;
        (_last, _near) = (held, climb.Ascent.Here);
        if (climb.Ascent.Objective > _best + 1e-9 * (1 + Math.Abs(_best)) && !Moved)
        {
            (Estimate, _best) = Top(_near);
            Moved = true;
        }
        return climb.Ascent.Objective;
    }

    // On the line through the last two points, unless it is far along.
    private ClimbStart Ahead(Restriction held)
    {
        if (_before is not var (value, theta) || !_last!.Contrast.SequenceEqual(held.Contrast))
            return _near;
        var share = (held.Value - _last.Value) / (_last.Value - value);
        return Math.Abs(share) <= 10 ? _near with { Theta = [.. _near.Theta.Zip(theta, (t, before) => t + share * (t - before))] } : _near;
    }

    private (BinomialEstimate Estimate, double Objective) Top(params ReadOnlySpan<ClimbStart> near)
    {
        var (estimate, ascent) = BinomialSolver.Top(_estimator, _problem, _design, new(), near);
        _top = _near = ascent.Here;
        return (estimate, ascent.Objective);
    }
}
