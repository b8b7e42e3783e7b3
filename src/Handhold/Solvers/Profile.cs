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
    private Ascent? _near;
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
        (Estimate, _near) =
            estimator == BinomialEstimator.Likelihood
                ? BinomialSolver.LikelihoodEnd(problem, _design)
                : BinomialSolver.PenalisedEnd(problem, _design);
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

    private double Held(Restriction held)
    {
        var (ascent, end) = Climb(held);
        if (end == AscentEnd.Stalled)
            throw new SolverException(
                FormattableString.Invariant($"The fit with a contrast held at {held.Value} stopped short. Its best point is attached."),
                ascent.Report()
            );
        _near = ascent;
        if (ascent.Objective > _best + 1e-9 * (1 + Math.Abs(_best)) && !Moved)
            Improve(ascent);
        return ascent.Objective;
    }

    private void Improve(Ascent from)
    {
        (Estimate, _near) = BinomialSolver.LikelihoodEnd(_problem, _design, near: from);
        (_best, Moved) = (_near.Objective, true);
    }

    private (Ascent Ascent, AscentEnd End) Climb(Restriction held)
    {
        SolverOptions options = new() { Held = held };
        if (_estimator == BinomialEstimator.Likelihood)
        {
            var fit = LikelihoodFit.Of(_problem, _design, options, _near);
            return (fit.Ascent, fit.End);
        }
        foreach (var start in (double[][])[_near!.Theta, []])
        {
            var ascent = BinomialSolver.Penalised(_problem, _design);
            start.CopyTo(ascent.Theta.AsSpan());
            ascent.Hold(held.Contrast.AsSpan(), held.Value);
            var end = ascent.Climb(options.Steps);
            if (end == AscentEnd.Converged || start.Length == 0)
                return (ascent, end);
        }
        throw new System.Diagnostics.UnreachableException();
    }
}
