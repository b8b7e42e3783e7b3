using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class GroupedLaplace
{
    // Of a predictor, for the fourth derivative.
    private const double Nudge = 1e-3;

    /// <summary>Combinations of levels.</summary>
    internal int Kinds => _starts.Length - 1;

    /// <summary>The terms that Laplace's method leaves out at the last point, to the next order: see <see cref="GroupedRemainder"/>.</summary>
    internal double Remainder()
    {
        var (pull, sum, cube) = (new double[Top.Length], 0.0, _width * _width * _width);
        var thirds = new double[Kinds * cube];
        Span<double> inverse = stackalloc double[_width * _width];
        for (var k = 0; k < Kinds; k++)
        {
            ReadInverse(k, inverse);
            for (var p = _starts[k]; p < _starts[k + 1]; p++)
            {
                var loading = _loadings.AsSpan(p * _width, _width);
                var (third, fourth) = Derivatives(k, p);
                var variance = 0.0;
                for (var a = 0; a < _width; a++)
                    variance += loading[a] * Orthonormal.Dot(inverse.Slice(a * _width, _width), loading);
                sum += fourth * variance * variance / 8;
                for (var (a, place) = (0, k * cube); a < _width; a++)
                {
                    pull[_coordinates[k * _width + a]] += third * variance * loading[a];
                    for (var b = 0; b < _width; b++)
                    for (var c = 0; c < _width; c++)
                        thirds[place++] += third * loading[a] * loading[b] * loading[c];
                }
            }
        }
        double[] solved = [.. pull];
        _factor.Solve(solved);
        return sum + Orthonormal.Dot(pull, solved) / 8 + Between(thirds) / 12;
    }

    // l''' and l'''' of a row.
    private (double Third, double Fourth) Derivatives(int kind, int row)
    {
        var predictor = _fixed[row];
        for (var a = 0; a < _width; a++)
            predictor += _loadings[row * _width + a] * Top[_coordinates[kind * _width + a]];
        var (before, after) = (Change(predictor - Nudge), Change(predictor + Nudge));
        return (-(before + after) / 2, -(after - before) / (2 * Nudge));

        double Change(double at) => new RatePoint(_rows.Link, at, 1, 0).ObservedChange(_kept[row], _lost[row]);
    }

    // Σ h₃ h₃ G G G over pairs of kinds, each index with one of the other.
    private double Between(double[] thirds)
    {
        var (sum, cube, columns) = (0.0, _width * _width * _width, new double[_width][]);
        var (once, twice) = (new double[cube], new double[cube]);
        for (var k = 0; k < Kinds; k++)
        {
            for (var a = 0; a < _width; a++)
            {
                columns[a] = new double[Top.Length];
                columns[a][_coordinates[k * _width + a]] = 1;
                _factor.Solve(columns[a]);
            }
            for (var other = 0; other <= k; other++)
            {
                // The tensor of the one with each index carried over to the other.
                thirds.AsSpan(k * cube, cube).CopyTo(once);
                for (var index = 0; index < 3; index++)
                {
                    Carry(other, columns, once, twice);
                    (once, twice) = (twice, once);
                }
                sum += (other == k ? 1 : 2) * Orthonormal.Dot(once, thirds.AsSpan(other * cube, cube));
            }
        }
        return sum;
    }

    // Carries the first index of a tensor to the coordinates of a kind, and makes it the last.
    private void Carry(int kind, double[][] columns, ReadOnlySpan<double> from, Span<double> to)
    {
        var square = _width * _width;
        for (var rest = 0; rest < square; rest++)
        for (var b = 0; b < _width; b++)
        {
            var carried = 0.0;
            for (var a = 0; a < _width; a++)
                carried += columns[a][_coordinates[kind * _width + b]] * from[a * square + rest];
            to[rest * _width + b] = carried;
        }
    }
}
