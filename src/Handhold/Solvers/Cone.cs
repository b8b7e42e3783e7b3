using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The directions of the coefficients along which no row's likelihood falls: up on keepers, down on rejects, level on rows with both.</summary>
/// <remarks>
/// Worked out on the orthonormal design, so that no unit or origin shows. A direction is level on a row when it moves it by less than 1e-9 of what it moves elsewhere:
/// rounding of a column cannot part what its numbers do not.
/// </remarks>
internal sealed class Cone
{
    private const double Level = 1e-9;

    private readonly OrthonormalDesign _design;
    private readonly List<double[]> _basis = [];
    private readonly double[] _a;
    private readonly int[] _rowOf;

    internal Cone(BinomialProblem problem, OrthonormalDesign design)
    {
        _design = design;
        List<double[]> level = [];
        List<int> pure = [];
        for (var i = 0; i < problem.Rows; i++)
        {
            if (problem.Keepers.Span[i] == 0 || problem.Keepers.Span[i] == problem.Frames.Span[i])
                pure.Add(i);
            else if (level.Count < design.Columns)
                Extend(level, Row(i));
        }
        for (var j = 0; j < design.Columns && level.Count < design.Columns; j++)
        {
            var unit = new double[design.Columns];
            unit[j] = 1;
            if (Extend(level, unit))
                _basis.Add(level[^1]);
        }
        List<double[]> rows = [];
        List<int> rowOf = [];
        foreach (var i in pure)
        {
            if (Seen(Row(i), problem.Keepers.Span[i] == 0 ? -1 : 1) is not { } seen)
                continue;
            rows.Add(seen);
            rowOf.Add(i);
        }
        (_a, _rowOf) = ([.. rows.SelectMany(row => row)], [.. rowOf]);
    }

    /// <summary>The rows that some direction moves strictly; null when the linear program did not finish.</summary>
    internal IReadOnlyList<int>? StrictRows() =>
        HalfSpaces.Strict(_a, _rowOf.Length, _basis.Count) is { } strict ? [.. _rowOf.Where((_, k) => strict[k])] : null;

    /// <summary>Whether some direction moves the contrast up (+1) or down (-1); null when the linear program did not finish.</summary>
    internal bool? Reaches(ReadOnlySpan<double> contrast, int sign)
    {
        var weights = contrast.ToArray();
        _design.ToContrast(weights);
        if (Seen(weights, sign) is not { } seen)
            return false;
        return HalfSpaces.Strict([.. _a, .. seen], _rowOf.Length + 1, _basis.Count)?[^1];
    }

    private double[] Row(int i)
    {
        var row = new double[_design.Columns];
        for (var j = 0; j < row.Length; j++)
            row[j] = _design.Q[j * _design.Rows + i];
        return row;
    }

    // A contrast in the coordinates of the directions left, of length one; null where none of them moves it.
    private double[]? Seen(double[] contrast, int sign)
    {
        double[] seen = [.. _basis.Select(direction => sign * Orthonormal.Dot(direction, contrast))];
        var length = Math.Sqrt(Orthonormal.Dot(seen, seen));
        return length > Level * Math.Sqrt(Orthonormal.Dot(contrast, contrast)) ? [.. seen.Select(x => x / length)] : null;
    }

    // Adds what a vector has outside the span of others.
    private static bool Extend(List<double[]> span, double[] vector)
    {
        var length = Math.Sqrt(Orthonormal.Dot(vector, vector));
        for (var pass = 0; pass < 2; pass++)
            foreach (var direction in span)
            {
                var along = Orthonormal.Dot(direction, vector);
                for (var j = 0; j < vector.Length; j++)
                    vector[j] -= along * direction[j];
            }
        var left = Math.Sqrt(Orthonormal.Dot(vector, vector));
        if (!(left > Level * length))
            return false;
        span.Add([.. vector.Select(x => x / left)]);
        return true;
    }
}
