using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>What an objective loses when a contrast is held.</summary>
internal sealed class Profile
{
    private readonly BinomialProblem _problem;
    private readonly BinomialEstimator _estimator;
    private readonly OrthonormalDesign _design;
    private readonly LimitFit? _limit;
    private Ascent? _top;
    private Ascent? _near;
    private Restriction? _last;
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
        (Estimate, _near) = Top();
        _top = _near;
        _best = _near.Objective;
    }

    /// <summary>The normal quantile that the square root of the loss is held against.</summary>
    internal double Bound { get; }

    /// <summary>The maximum; of a likelihood without one the bias-reduced, which lies inside.</summary>
    internal BinomialEstimate Estimate { get; private set; }

    /// <summary>Whether a fit with a contrast held came out above the maximum, which has been climbed again from there: what was found before is void.</summary>
    internal bool Moved { get; set; }

    /// <summary>Of a likelihood without maximum, the directions in which it never falls.</summary>
    internal Cone? Cone { get; }

    /// <summary>What the limit's rates give for a contrast that stays finite.</summary>
    internal double Limit(ImmutableArray<double> contrast) => Orthonormal.Dot(contrast.AsSpan(), _limit!.Solution);

    /// <summary>√(twice the objective lost by holding a contrast) - <see cref="Bound"/>: negative inside.</summary>
    internal double Excess(ImmutableArray<double> contrast, double value)
    {
        var lost = _best - (_limit is null ? Held(new(contrast, value)) : new LimitFit(_problem.Reduced(contrast, value)).Objective);
        return Math.Sqrt(Math.Max(0, 2 * lost)) - Bound;
    }

    // From where the last contrast held ended; should that stop short, by way of the contrast half way.
    private double Held(Restriction held, int halvings = 8)
    {
        var climb = HighestClimb.Of(_estimator, _problem, _design, new() { Held = held }, _near!, _top!);
        if (climb.End == AscentEnd.Stalled && halvings > 0 && _last is { } last)
        {
            Held(new([.. last.Contrast.Zip(held.Contrast, (a, b) => (a + b) / 2)], (last.Value + held.Value) / 2), halvings - 1);
            return Held(held, halvings - 1);
        }
        if (climb.End == AscentEnd.Stalled)
            throw new SolverException(
                FormattableString.Invariant($"The fit with a contrast held at {held.Value} stopped short. Its best point is attached."),
                climb.Ascent.Report()
            );
        _last = held;
        _near = climb.Ascent;
        if (_near.Objective > _best + 1e-9 * (1 + Math.Abs(_best)) && !Moved)
        {
            (Estimate, _near) = Top(_near);
            _top = _near;
            (_best, Moved) = (_near.Objective, true);
        }
        return climb.Ascent.Objective;
    }

    private (BinomialEstimate Estimate, Ascent Ascent) Top(params ReadOnlySpan<Ascent> near) =>
        BinomialSolver.Top(_estimator, _problem, _design, new(), near);
}
