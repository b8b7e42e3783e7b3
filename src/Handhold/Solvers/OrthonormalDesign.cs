using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>A design in orthonormal columns, X = Q R: solvers step in θ = R b, where no column's unit or origin shows.</summary>
internal sealed class OrthonormalDesign
{
    // Rounding leaves 1e-16 of a dependent column; a covariate in steps of 1e-6 of its distance from zero leaves 1e-6.
    private const double Tolerance = 1e-11;

    private readonly double[] _r;
    private readonly int _dependent;

    internal OrthonormalDesign(BinomialProblem problem)
    {
        (Rows, Columns) = (problem.Rows, problem.Columns.Length);
        (Q, _r) = (new double[Rows * Columns], new double[Columns * Columns]);
        var design = problem.Design.Span;
        for (var i = 0; i < Rows; i++)
        for (var j = 0; j < Columns; j++)
            Q[j * Rows + i] = design[i * Columns + j];
        _dependent = Orthonormal.Factor(Q, Rows, Columns, _r, Tolerance);
        for (var j = 0; j < Columns; j++)
            LogDeterminant += Math.Log(_r[j * Columns + j]);
    }

    internal int Rows { get; }

    internal int Columns { get; }

    /// <summary>Column-major, rows × columns.</summary>
    internal double[] Q { get; }

    /// <summary>log of the determinant of R.</summary>
    internal double LogDeterminant { get; }

    /// <summary>The design of a problem whose columns tell apart.</summary>
    /// <exception cref="AliasedColumnsException">A column adds nothing to those before it.</exception>
    internal static OrthonormalDesign Of(BinomialProblem problem)
    {
        OrthonormalDesign design = new(problem);
        return design._dependent == 0 ? design : throw new AliasedColumnsException(design.Aliased(problem.Columns));
    }

    /// <summary>Whether a column is a combination of those before it.</summary>
    internal bool IsDependent(int column) => _r[column * Columns + column] == 0;

    /// <summary>Replaces θ by the coefficients b.</summary>
    internal void ToCoefficients(Span<double> theta) => Orthonormal.Solve(_r, theta);

    /// <summary>Replaces the weights of a contrast of b by those of the same contrast of θ.</summary>
    internal void ToContrast(Span<double> weights) => Orthonormal.SolveTransposed(_r, weights);

    /// <summary>Replaces the coefficients b by θ.</summary>
    internal void FromCoefficients(Span<double> b)
    {
        for (var i = 0; i < Columns; i++)
            b[i] = Orthonormal.Dot(_r.AsSpan(i * Columns + i, Columns - i), b[i..]);
    }

    /// <summary>The weights with which the columns before make up a dependent one.</summary>
    internal double[] Combination(int dependent)
    {
        double[] weights = [.. Enumerable.Range(0, Columns).Select(k => k < dependent ? _r[k * Columns + dependent] : 0)];
        Orthonormal.Solve(_r, weights);
        return weights;
    }

    internal ImmutableArray<AliasedColumn> Aliased(ImmutableArray<string> names) =>
        [
            .. Enumerable
                .Range(0, Columns)
                .Where(IsDependent)
                .Select(j =>
                {
                    var weights = Combination(j);
                    return new AliasedColumn(
                        names[j],
                        [
                            .. Enumerable
                                .Range(0, j)
                                .Where(k => weights[k] != 0 && Shows(k, weights[k], j))
                                .Select(k => (names[k], weights[k])),
                        ]
                    );
                }),
        ];

    // What a column's length adds to the dependent one's beyond rounding.
    private bool Shows(int column, double weight, int dependent) => Math.Abs(weight) * Length(column) > 1e-9 * Length(dependent);

    private double Length(int column) =>
        Math.Sqrt(Enumerable.Range(0, column + 1).Sum(k => _r[k * Columns + column] * _r[k * Columns + column]));
}
