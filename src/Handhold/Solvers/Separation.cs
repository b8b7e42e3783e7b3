using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Whether, where and in which coefficients keepers and rejects separate.</summary>
public sealed class Separation
{
    internal Separation(SeparationKind kind, ImmutableArray<DivergentColumn> columns, ImmutableArray<int> rows) =>
        (Kind, Columns, Rows) = (kind, columns, rows);

    /// <summary>The verdict.</summary>
    public SeparationKind Kind { get; }

    /// <summary>The coefficients that diverge, in the order of the columns.</summary>
    public ImmutableArray<DivergentColumn> Columns { get; }

    /// <summary>The rows that some separating predictor parts strictly, ascending; the others overlap.</summary>
    public ImmutableArray<int> Rows { get; }

    /// <summary>Whether no finite maximum of the likelihood exists.</summary>
    public bool IsSeparated => Kind is not (SeparationKind.None or SeparationKind.Unknown);

    /// <summary>Decides the separation of a problem.</summary>
    /// <remarks>
    /// An intercept and one covariate are decided by comparing numbers; more by a linear program on the orthonormalised design. Asks only what can part keepers
    /// from rejects: with a ceiling below 1 or a floor above 0 the likelihood may lack a finite maximum without it. Source: Albert and Anderson (1984),
    /// Biometrika 71, 1-10.
    /// </remarks>
    /// <exception cref="AliasedColumnsException">A column adds nothing to the columns before it.</exception>
    public static Separation Of(BinomialProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var (pooled, cellOf) = problem.Checked().Pool();
        var design = OrthonormalDesign.Of(pooled);
        var verdict = LineScan.Of(pooled) ?? Program(pooled, design);
        var strict = verdict.Rows.ToHashSet();
        return new(verdict.Kind, verdict.Columns, [.. Enumerable.Range(0, problem.Rows).Where(i => strict.Contains(cellOf[i]))]);
    }

    /// <summary>The verdict of the linear program.</summary>
    internal static Separation Program(BinomialProblem problem, OrthonormalDesign design)
    {
        Cone cone = new(problem, design);
        Separation unknown = new(SeparationKind.Unknown, [], []);
        if (cone.StrictRows() is not { } rows)
            return unknown;
        if (rows.Count == 0)
            return new(SeparationKind.None, [], []);
        List<DivergentColumn> columns = [];
        for (var j = 0; j < problem.Columns.Length; j++)
        {
            var unit = new double[problem.Columns.Length];
            unit[j] = 1;
            if (cone.Reaches(unit, 1) is not { } up || cone.Reaches(unit, -1) is not { } down)
                return unknown;
            if (up || down)
                columns.Add(new(j, problem.Columns[j], (up ? 1 : 0) - (down ? 1 : 0)));
        }
        return new(KindOf(problem, rows.Count), [.. columns], [.. rows]);
    }

    private static SeparationKind KindOf(BinomialProblem problem, int strict)
    {
        var (kept, frames) = (0L, 0L);
        for (var i = 0; i < problem.Rows; i++)
            (kept, frames) = (kept + problem.Keepers.Span[i], frames + problem.Frames.Span[i]);
        return kept == frames ? SeparationKind.AllKeepers
            : kept == 0 ? SeparationKind.NoKeepers
            : strict == problem.Rows ? SeparationKind.Complete
            : SeparationKind.Quasi;
    }
}
