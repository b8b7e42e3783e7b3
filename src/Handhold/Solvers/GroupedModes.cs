using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The most likely effects of every level, given coefficients and spreads, and what the data leave open of them.</summary>
internal sealed class GroupedModes
{
    private readonly GroupedFit _fit;
    private readonly GroupedLaplace _laplace;
    private readonly Lazy<double[][]> _moves;

    internal GroupedModes(GroupedFit fit)
    {
        (_fit, _laplace) = (fit, new(fit.Problem, new(fit.Design, []), 0, fit.Bases));
        _laplace.At(fit.Top, new double[fit.Top.Length]);
        Standard = [.. _laplace.Top];
        _moves = new(Moves);
    }

    /// <summary>û: effects as independent unit normals.</summary>
    internal ImmutableArray<double> Standard { get; }

    /// <summary>A level's effects on the columns that vary.</summary>
    internal ImmutableArray<double> Effects(int grouping, int level)
    {
        var (size, loadings) = (_fit.Problem.Effects[grouping].Size, _fit.Loadings(grouping));
        var top = Standard.AsSpan().Slice(_laplace.Coordinate(grouping, level, 0), size);
        var effects = new double[size];
        for (var e = 0; e < size; e++)
            effects[e] = Orthonormal.Dot(loadings.AsSpan(e * size, size), top);
        return [.. effects];
    }

    /// <summary>The sd of a level's effect given coefficients and spreads.</summary>
    internal double Error(int grouping, int level, int effect)
    {
        var (size, loadings) = (_fit.Problem.Effects[grouping].Size, _fit.Loadings(grouping));
        var variance = 0.0;
        for (var a = 0; a < size; a++)
        for (var b = 0; b < size; b++)
            variance +=
                loadings[effect * size + a]
                * loadings[effect * size + b]
                * _laplace.InverseAt(_laplace.Coordinate(grouping, level, a), _laplace.Coordinate(grouping, level, b));
        return Math.Sqrt(variance);
    }

    /// <summary>The share of a level's variance, at the centre of the data, that its own rows leave open: 1 where they say nothing.</summary>
    internal double Open(int grouping, int level) =>
        _laplace.InverseAt(_laplace.Coordinate(grouping, level, 0), _laplace.Coordinate(grouping, level, 0));

    /// <summary>The linear predictor of a row for chosen levels, and its variance in two parts: what is open of the levels given the estimates, and the doubt on these.</summary>
    /// <remarks>a·H⁻¹a and J V Jᵀ, J the derivative of x·b + a·û in the estimates, V their covariance. Source: Kass and Steffey (1989), Journal of the American Statistical Association 84, 717-726.</remarks>
    /// <param name="row">The row of the design.</param>
    /// <param name="levels">Groupings and their levels; the others are at zero.</param>
    internal (double Predictor, double Open, double Doubt) Predict(ReadOnlySpan<double> row, ReadOnlySpan<(int Grouping, int Level)> levels)
    {
        var (predictor, loading, slope) = Line(row, levels);
        double[] solved = [.. loading];
        _laplace.Solve(solved);
        return (predictor, Orthonormal.Dot(loading, solved), _fit.Variance(slope));
    }

    /// <summary>The covariance, row-major, of the linear predictors of some rows for levels of each: what is open of the levels, and the doubt on the estimates.</summary>
    internal double[] Covariance(ImmutableArray<(ImmutableArray<double> Row, ImmutableArray<(int Grouping, int Level)> Levels)> lines)
    {
        var (covariance, count) = (new double[lines.Length * lines.Length], lines.Length);
        (double Predictor, double[] Loading, double[] Slope)[] all =
        [
            .. lines.Select(line => Line(line.Row.AsSpan(), line.Levels.AsSpan())),
        ];
        for (var i = 0; i < count; i++)
        {
            double[] solved = [.. all[i].Loading];
            _laplace.Solve(solved);
            for (var j = 0; j < count; j++)
                covariance[i * count + j] = Orthonormal.Dot(solved, all[j].Loading) + _fit.Covaries(all[i].Slope, all[j].Slope);
        }
        return covariance;
    }

    // A row's predictor, its loadings on û, and its derivatives in the estimates.
    private (double Predictor, double[] Loading, double[] Slope) Line(
        ReadOnlySpan<double> row,
        ReadOnlySpan<(int Grouping, int Level)> levels
    )
    {
        var predictor = Orthonormal.Dot(row, _fit.Estimate.Coefficients.AsSpan());
        var (loading, slope) = (new double[Standard.Length], new double[_fit.Top.Length]);
        row.CopyTo(slope);
        _fit.Design.ToContrast(slope.AsSpan(0, _fit.Design.Columns));
        foreach (var (grouping, level) in levels)
            Load(row, grouping, level, loading, slope);
        for (var j = 0; levels.Length > 0 && j < slope.Length; j++)
            slope[j] += Orthonormal.Dot(loading, _moves.Value[j]);
        return (predictor + Orthonormal.Dot(loading, Standard.AsSpan()), loading, slope);
    }

    // A level's part of a row: a, and what the predictor gains by λ while û stays.
    private void Load(ReadOnlySpan<double> row, int grouping, int level, double[] loading, double[] slope)
    {
        var (columns, own) = (_fit.Columns(grouping, row), _fit.Loading(grouping, row));
        var place = _fit.SpreadsOf(grouping);
        for (var r = 0; r < columns.Length; r++)
        {
            loading[_laplace.Coordinate(grouping, level, r)] += own[r];
            for (var c = 0; c <= r; c++)
                slope[place++] += columns[r] * Standard[_laplace.Coordinate(grouping, level, c)];
        }
    }

    // The derivatives of û, by central differences.
    private double[][] Moves()
    {
        var (moves, point, gradient) = (new double[_fit.Top.Length][], _fit.Top.ToArray(), new double[_fit.Top.Length]);
        for (var j = 0; j < point.Length; j++)
        {
            var step = _fit.StepOf(_fit.Top, j);
            moves[j] = new double[Standard.Length];
            foreach (var sign in (int[])[1, -1])
            {
                point[j] = _fit.Top[j] + sign * step;
                _laplace.At(point, gradient);
                for (var k = 0; k < Standard.Length; k++)
                    moves[j][k] += sign * _laplace.Top[k] / (2 * step);
            }
            point[j] = _fit.Top[j];
        }
        _laplace.At(point, gradient);
        return moves;
    }
}
