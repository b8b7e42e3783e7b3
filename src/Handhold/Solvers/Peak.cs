using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The top of a log density of few coordinates, each of about unit scale, and its covariance there.</summary>
/// <remarks>
/// Newton's method with central differences (steps 1e-3 unless the density is rougher), shifted towards the gradient until the step is uphill: Levenberg (1944), Quarterly of Applied
/// Mathematics 2, 164-168. A start for sampling, so the digits of the top do not matter.
/// </remarks>
internal sealed class Peak
{
    private const double Usual = 1e-3;
    private const int MostSteps = 60;
    private readonly LogDensity _density;
    private readonly double[] _gradient;
    private readonly double[] _curvature;

    private readonly double _step;

    private Peak(LogDensity density, double[] start, double step)
    {
        (_density, Top, _step) = (density, start, step);
        (_gradient, _curvature) = (new double[start.Length], new double[start.Length * start.Length]);
        var (value, shift) = (density(start), 1e-3);
        for (var moves = 0; moves < MostSteps; moves++)
        {
            Differentiate(value);
            double[] move;
            double next;
            while (true)
            {
                move = Move(shift);
                next = density(Moved(move, 1));
                if (next >= value || shift > 1e8)
                    break;
                shift *= 4;
            }

            if (!(next >= value))
                break;
            Top = Moved(move, 1);
            value = next;
            shift = Math.Max(1e-6, shift / 10);
            if (move.Max(Math.Abs) < step)
                break;
        }

        Differentiate(value);
        Factor = CovarianceFactor();
    }

    /// <summary>Where to start: the best of places along the first coordinate, from -4 to 4, the others at zero.</summary>
    /// <param name="density">The log density.</param>
    /// <param name="dimension">Coordinates.</param>
    /// <param name="apart">Distance between places.</param>
    internal static double[] Start(LogDensity density, int dimension, double apart)
    {
        var each = (int)(4 / apart);
        return Enumerable.Range(-each, 2 * each + 1).Select(i => At(i * apart)).MaxBy(z => density(z))!;

        double[] At(double first)
        {
            var z = new double[dimension];
            z[0] = first;
            return z;
        }
    }

    internal static Peak Of(LogDensity density, double[] start, double step = Usual) => new(density, start, step);

    /// <summary>Where the density is highest.</summary>
    internal double[] Top { get; private set; }

    /// <summary>Lower triangle L of the covariance L Lᵀ of the normal with the same curvature, row-major.</summary>
    internal double[] Factor { get; }

    private void Differentiate(double centre)
    {
        var n = Top.Length;
        Parallel.For(0, n, Row);

        double Value(int i, double di, int j, double dj)
        {
            var at = (double[])Top.Clone();
            at[i] += di;
            at[j] += dj;
            return _density(at);
        }

        void Row(int i)
        {
            var (up, down) = (Value(i, _step, i, 0), Value(i, -_step, i, 0));
            _gradient[i] = (up - down) / (2 * _step);
            _curvature[i * n + i] = (2 * centre - up - down) / (_step * _step);
            for (var j = 0; j < i; j++)
                _curvature[i * n + j] = _curvature[j * n + i] =
                    -(Value(i, _step, j, _step) - Value(i, _step, j, -_step) - Value(i, -_step, j, _step) + Value(i, -_step, j, -_step))
                    / (4 * _step * _step);
        }
    }

    private double[] Move(double shift)
    {
        var factor = Shifted(ref shift);
        var move = (double[])_gradient.Clone();
        Cholesky.Forward(factor, move);
        Cholesky.Back(factor, move);
        return move;
    }

    /// <summary>Cholesky factor of the curvature, its diagonal raised by the shift, or more until it is positive definite.</summary>
    private double[] Shifted(ref double shift)
    {
        var n = Top.Length;
        for (; ; shift = 4 * shift + 1e-3)
        {
            var factor = (double[])_curvature.Clone();
            for (var i = 0; i < n; i++)
                factor[i * n + i] += shift;
            if (Cholesky.Factor(factor, n, 1e-6))
                return factor;
        }
    }

    private double[] Moved(double[] move, double by) => [.. Top.Zip(move, (t, m) => t + by * m)];

    private double[] CovarianceFactor()
    {
        var (n, none) = (Top.Length, 0.0);
        var precision = Shifted(ref none);
        var covariance = new double[n * n];
        var column = new double[n];
        for (var j = 0; j < n; j++)
        {
            Array.Clear(column);
            column[j] = 1;
            Cholesky.Forward(precision, column);
            Cholesky.Back(precision, column);
            for (var i = 0; i < n; i++)
                covariance[i * n + j] = column[i];
        }

        Cholesky.Factor(covariance, n, 0);
        return covariance;
    }
}
