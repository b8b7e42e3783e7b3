namespace Handhold.Solvers;

/// <summary>Separation along a line, an intercept and one covariate, decided by comparing numbers alone.</summary>
internal static class LineScan
{
    /// <summary>The verdict, or null when the design is not a line or all frames judge alike.</summary>
    internal static Separation? Of(BinomialProblem problem)
    {
        if (
            problem.Columns.Length != 2
            || (
                Constant(problem, 0) ? 0
                : Constant(problem, 1) ? 1
                : -1
            )
                is not (>= 0 and var intercept)
        )
            return null;
        foreach (var sign in (int[])[-1, 1])
        {
            var (keptFrom, rejectedTo) = (double.PositiveInfinity, double.NegativeInfinity);
            for (var i = 0; i < problem.Rows; i++)
            {
                var x = sign * At(problem, i, 1 - intercept);
                if (problem.Keepers.Span[i] > 0)
                    keptFrom = Math.Min(keptFrom, x);
                if (problem.Keepers.Span[i] < problem.Frames.Span[i])
                    rejectedTo = Math.Max(rejectedTo, x);
            }
            if (double.IsInfinity(keptFrom) || double.IsInfinity(rejectedTo))
                return null;
            if (keptFrom >= rejectedTo)
                return Parted(problem, intercept, sign, rejectedTo, keptFrom);
        }
        return new(SeparationKind.None, [], []);
    }

    // The predictor grows as sign (x - threshold), its threshold anywhere from the last reject to the first keeper.
    private static Separation Parted(BinomialProblem problem, int intercept, int sign, double from, double to)
    {
        var unit = Math.Sign(At(problem, 0, intercept));
        var level =
            from >= 0 ? -unit
            : to <= 0 ? unit
            : 0;
        var moves = from < to || from != 0;
        List<DivergentColumn> columns = [new(1 - intercept, problem.Columns[1 - intercept], sign)];
        if (moves)
            columns.Insert(intercept, new(intercept, problem.Columns[intercept], level));
        return new(
            from < to ? SeparationKind.Complete : SeparationKind.Quasi,
            [.. columns],
            [.. Enumerable.Range(0, problem.Rows).Where(i => from < to || sign * At(problem, i, 1 - intercept) != from)]
        );
    }

    private static double At(BinomialProblem problem, int row, int column) => problem.Design.Span[row * 2 + column];

    private static bool Constant(BinomialProblem problem, int column)
    {
        for (var i = 0; i < problem.Rows; i++)
            if (At(problem, i, column) != At(problem, 0, column) || At(problem, i, column) == 0)
                return false;
        return true;
    }
}
