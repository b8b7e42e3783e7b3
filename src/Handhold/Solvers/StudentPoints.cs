using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>Quasi-random points of a standard multivariate t distribution: scrambled Sobol points, a normal deviate for every coordinate and one chi-square.</summary>
internal sealed class StudentPoints
{
    /// <summary>Degrees of freedom whose tails are heavy enough for most densities.</summary>
    internal const int Usual = 8;

    private readonly int _dimension;
    private readonly double[] _points;
    private readonly double[] _logs;

    /// <param name="dimension">Coordinates.</param>
    /// <param name="degrees">Degrees of freedom, even.</param>
    /// <param name="count">Points.</param>
    /// <param name="bits">Gives 64 uniform bits at a time, for the shifts of the points.</param>
    /// <param name="shuffled">Whether in random order, so that they can stand beside other points without being like them.</param>
    internal StudentPoints(int dimension, int degrees, int count, Func<ulong> bits, bool shuffled = false)
    {
        Sobol cube = new([.. Enumerable.Range(0, dimension + 1).Select(_ => bits())]);
        (_dimension, _points, _logs) = (dimension, new double[count * dimension], new double[count]);
        int[] order = [.. Enumerable.Range(0, count)];
        for (var i = count - 1; shuffled && i > 0; i--)
        {
            var other = (int)(bits() % (ulong)(i + 1));
            (order[i], order[other]) = (order[other], order[i]);
        }

        var constant =
            GammaFunctions.LogGamma(0.5 * (degrees + dimension))
            - GammaFunctions.LogGamma(0.5 * degrees)
            - 0.5 * dimension * Math.Log(degrees * Math.PI);
        Parallel.For(
            0,
            count,
            index =>
            {
                Span<double> uniform = stackalloc double[dimension + 1];
                cube.Write(order[index], uniform);
                var stretch = Math.Sqrt(degrees / ChiSquare.Quantile(uniform[dimension], degrees));
                var (point, square) = (index * dimension, 0.0);
                for (var i = 0; i < dimension; i++)
                {
                    var deviate = stretch * Normal.Quantile(uniform[i]);
                    _points[point + i] = deviate;
                    square += deviate * deviate;
                }

                _logs[index] = constant - 0.5 * (degrees + dimension) * Elementary.Log1p(square / degrees);
            }
        );
    }

    internal int Count => _logs.Length;

    internal ReadOnlySpan<double> this[int index] => _points.AsSpan(index * _dimension, _dimension);

    /// <summary>Log density of the distribution at a point.</summary>
    internal double LogDensity(int index) => _logs[index];
}
