namespace Handhold.Solvers;

/// <summary>A likelihood's highest climb, asymptotes at their bounds included.</summary>
internal readonly record struct LikelihoodFit(Ascent Ascent, AscentEnd End)
{
    // Where a ceiling's loss or a floor starts when it is estimated.
    private static ReadOnlySpan<double> Losses => [0.02, 0.1, 0.3];

    /// <summary>The highest of the climbs from fixed starts; where <paramref name="near"/> is given, of the climb from there alone if it arrives.</summary>
    internal static LikelihoodFit Of(BinomialProblem problem, OrthonormalDesign design, SolverOptions options, Ascent? near = null)
    {
        if (near is not null)
        {
            var again = Climb(problem, design, options, near.Ceiling, near.Floor, near.Free, near.Theta);
            if (again.End == AscentEnd.Converged)
                return again;
        }
        var plain = Climb(problem, design, options, 1, 0, (false, false), []);
        if (problem is { Ceiling: 1, Floor: 0 })
            return plain;
        LikelihoodFit? best = null;
        foreach (var free in Freedoms(problem))
        foreach (var loss in free == (false, false) ? [0] : Losses)
        {
            var (ceiling, floor) = (problem.Ceiling ?? (free.Ceiling ? 1 - loss : 1), problem.Floor ?? (free.Floor ? loss : 0));
            if (floor >= ceiling)
                continue;
            foreach (var start in (double[][])[plain.Ascent.Theta, []])
            {
                var fit = Climb(problem, design, options, ceiling, floor, free, start);
                best = best is { } other && !fit.Above(other) ? other : fit;
            }
        }
        return best ?? plain;
    }

    // Which asymptotes are free; one that is estimated may also end at its bound.
    private static IEnumerable<(bool Ceiling, bool Floor)> Freedoms(BinomialProblem problem) =>
        from ceiling in problem.Ceiling is null ? [false, true] : (bool[])[false]
        from floor in problem.Floor is null ? [false, true] : (bool[])[false]
        select (ceiling, floor);

    private static LikelihoodFit Climb(
        BinomialProblem problem,
        OrthonormalDesign design,
        SolverOptions options,
        double ceiling,
        double floor,
        (bool Ceiling, bool Floor) free,
        ReadOnlySpan<double> start
    )
    {
        Ascent ascent = new(problem, design, penalised: false, ceiling, floor, free);
        start[..Math.Min(start.Length, design.Columns)].CopyTo(ascent.Theta);
        if (options.Held is { } held)
            ascent.Hold(held.Contrast.AsSpan(), held.Value);
        return new(ascent, ascent.Climb(options.Steps));
    }

    // Higher beyond rounding; of two as high the one that arrived.
    private bool Above(LikelihoodFit other)
    {
        var gain = Ascent.Objective - other.Ascent.Objective;
        var noise = 1e-8 * (1 + Math.Abs(Ascent.Objective));
        return gain > noise || (gain > -noise && End == AscentEnd.Converged && other.End != AscentEnd.Converged);
    }
}
