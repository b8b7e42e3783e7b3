namespace Handhold.Solvers;

/// <summary>The highest of the climbs from fixed starts: (penalised) likelihoods may have several maxima.</summary>
internal readonly record struct HighestClimb(Ascent Ascent, AscentEnd End)
{
    // Where a ceiling's loss or a floor starts when it is estimated.
    private static ReadOnlySpan<double> Losses => [0.02, 0.1, 0.3];

    // A penalised likelihood starts here too: far enough along the likelihood's climb to be on its side, and not yet where nothing weighs.
    private const int LikelihoodSteps = 6;

    /// <summary>Of a problem's objective; the highest of the climbs from <paramref name="near"/> alone if it arrives, and where there is one top only the first that does.</summary>
    internal static HighestClimb Of(
        BinomialEstimator estimator,
        BinomialProblem problem,
        OrthonormalDesign design,
        SolverOptions options,
        params ReadOnlySpan<ClimbStart> near
    )
    {
        HighestClimb? best = null;
        foreach (var (theta, ceiling, floor, free) in near)
        {
            var again = Climb(estimator, problem, design, options, ceiling, floor, free, theta);
            best = best?.Or(again) ?? again;
            if (again.End == AscentEnd.Converged && estimator == BinomialEstimator.Likelihood && problem is { Ceiling: 1, Floor: 0 })
                break;
        }
        return best is { End: AscentEnd.Converged } arrived ? arrived
            : estimator == BinomialEstimator.Likelihood ? Likelihood(problem, design, options)
            : Penalised(problem, design, options);
    }

    private static HighestClimb Penalised(BinomialProblem problem, OrthonormalDesign design, SolverOptions options)
    {
        if (problem is not { Ceiling: { } ceiling, Floor: { } floor })
            throw new ArgumentException(
                "A bias-reduced fit takes a fixed ceiling and floor. Fix them, or estimate them with the likelihood.",
                nameof(problem)
            );
        var likelihood = new Ascent(problem, design, penalised: false, ceiling, floor, (false, false));
        if (options.Held is { } held)
            likelihood.Hold(held.Contrast.AsSpan(), held.Value);
        var end = likelihood.Climb(LikelihoodSteps);
        double[] along = [.. likelihood.Theta];
        var best = From([]).Or(From(along));
        if (end != AscentEnd.Converged && likelihood.Decrement > 1e-2 && likelihood.Climb(options.Steps) == AscentEnd.Converged)
            best = best.Or(From(likelihood.Theta));
        if (problem is not { Columns.Length: 1, Link: Link.Logit, Ceiling: 1, Floor: 0 } && !problem.IsEvenLine())
        {
            best = Further(design, along).Aggregate(best, (high, start) => high.Or(From(start)));
            for (var (found, tries) = (double.NegativeInfinity, 0); best.Ascent.Objective > found && tries < 5; tries++)
            {
                found = best.Ascent.Objective;
                best = Beside(design, best.Ascent.Theta).Aggregate(best, (high, start) => high.Or(From(start)));
            }
        }
        // On a saddle between two maxima: a step to the side.
        return best.End == AscentEnd.Converged ? best : best.Or(From([.. best.Ascent.Theta.Select((t, j) => t + 0.1 * (j + 1))]));

        HighestClimb From(ReadOnlySpan<double> start) =>
            Climb(BinomialEstimator.BiasReduced, problem, design, options, ceiling, floor, (false, false), start);
    }

    // Where other maxima of random problems were found: beyond the likelihood's climb, far out along a coordinate.
    private static IEnumerable<double[]> Further(OrthonormalDesign design, double[] along)
    {
        yield return [.. along.Select(t => 2 * t)];
        yield return [.. along.Select(t => 4 * t)];
        for (var j = 0; j < design.Columns; j++)
            foreach (var sign in (int[])[-1, 1])
            {
                var far = new double[design.Columns];
                far[j] = sign * 3 * Math.Sqrt(design.Rows);
                yield return far;
            }
    }

    // On either side of a point, those rows moved that weigh much in the design.
    private static IEnumerable<double[]> Beside(OrthonormalDesign design, double[] point)
    {
        for (var i = 0; i < design.Rows; i++)
        {
            double[] row = [.. Enumerable.Range(0, design.Columns).Select(j => design.Q[j * design.Rows + i])];
            var leverage = row.Sum(q => q * q);
            if (leverage < 0.25)
                continue;
            foreach (var step in (double[])[-10, -4, 4, 10])
                yield return [.. point.Zip(row, (t, q) => t + step * q / leverage)];
        }
    }

    private static HighestClimb Likelihood(BinomialProblem problem, OrthonormalDesign design, SolverOptions options)
    {
        var plain = Climb(BinomialEstimator.Likelihood, problem, design, options, 1, 0, (false, false), []);
        if (problem is { Ceiling: 1, Floor: 0 })
            return plain;
        HighestClimb? best = null;
        foreach (var free in Freedoms(problem))
        foreach (var loss in free == (false, false) ? [0] : Losses)
        {
            var (ceiling, floor) = (problem.Ceiling ?? (free.Ceiling ? 1 - loss : 1), problem.Floor ?? (free.Floor ? loss : 0));
            if (floor >= ceiling)
                continue;
            foreach (var start in (double[][])[plain.Ascent.Theta, []])
            {
                var fit = Climb(BinomialEstimator.Likelihood, problem, design, options, ceiling, floor, free, start);
                best = best?.Or(fit) ?? fit;
            }
        }
        return best ?? plain;
    }

    // Which asymptotes are free; one that is estimated may also end at its bound.
    private static IEnumerable<(bool Ceiling, bool Floor)> Freedoms(BinomialProblem problem) =>
        from ceiling in problem.Ceiling is null ? [false, true] : (bool[])[false]
        from floor in problem.Floor is null ? [false, true] : (bool[])[false]
        select (ceiling, floor);

    private static HighestClimb Climb(
        BinomialEstimator estimator,
        BinomialProblem problem,
        OrthonormalDesign design,
        SolverOptions options,
        double ceiling,
        double floor,
        (bool Ceiling, bool Floor) free,
        ReadOnlySpan<double> start
    )
    {
        Ascent ascent = new(problem, design, penalised: estimator == BinomialEstimator.BiasReduced, ceiling, floor, free);
        start[..Math.Min(start.Length, design.Columns)].CopyTo(ascent.Theta);
        if (options.Held is { } held)
            ascent.Hold(held.Contrast.AsSpan(), held.Value);
        return new(ascent, ascent.Climb(options.Steps));
    }

    // The higher beyond rounding; of two as high the one that arrived. What stopped on its way, perhaps where rounding feigns height, never beats what arrived.
    private HighestClimb Or(HighestClimb other)
    {
        if (End == AscentEnd.Converged && other.End == AscentEnd.Stalled)
            return this;
        if (End == AscentEnd.Stalled && other.End == AscentEnd.Converged)
            return other;
        var gain = other.Ascent.Objective - Ascent.Objective;
        var noise = 1e-8 * (1 + Math.Abs(Ascent.Objective));
        return gain > noise || (gain > -noise && other.End == AscentEnd.Converged && End != AscentEnd.Converged) ? other : this;
    }
}
