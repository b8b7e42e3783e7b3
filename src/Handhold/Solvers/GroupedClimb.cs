using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>A quasi-Newton climb of a grouped likelihood, some numbers held.</summary>
/// <remarks>
/// Damped BFGS on the curvature, minus the second derivatives: Nocedal and Wright (2006), Numerical Optimization, procedure 18.2. Where it is not positive definite its diagonal
/// is raised until it is, of the spreads alone where that is enough.
/// </remarks>
internal sealed class GroupedClimb
{
    private const int Halvings = 40;
    private const double Damping = 0.2;

    // What a curvature is raised by, from and to.
    private const double Least = 1e-3;
    private const double Highest = 1e6;

    private readonly IGroupedLikelihood _likelihood;
    private readonly int[] _free;
    private readonly double[] _trial;
    private readonly double[] _trialGradient;
    private readonly double[] _factor;
    private readonly double[] _step;

    /// <param name="likelihood">What is climbed.</param>
    /// <param name="point">Where to start; it moves along.</param>
    /// <param name="curvature">Minus the second derivatives, as far as known.</param>
    /// <param name="held">Places that stay.</param>
    internal GroupedClimb(IGroupedLikelihood likelihood, double[] point, double[] curvature, params ReadOnlySpan<int> held)
    {
        (_likelihood, Point, Curvature) = (likelihood, point, curvature);
        List<int> free = [.. Enumerable.Range(0, point.Length)];
        foreach (var place in held)
            free.Remove(place);
        _free = [.. free];
        (Gradient, _trial, _trialGradient) = (new double[point.Length], new double[point.Length], new double[point.Length]);
        (_factor, _step) = (new double[_free.Length * _free.Length], new double[_free.Length]);
        LogLikelihood = likelihood.At(point, Gradient);
    }

    internal double[] Point { get; }

    internal double[] Gradient { get; }

    internal double[] Curvature { get; set; }

    internal double LogLikelihood { get; private set; }

    internal int Taken { get; private set; }

    /// <summary>Length of the last full step in standard errors.</summary>
    internal double Decrement { get; private set; }

    /// <summary>Climbs until a full step is shorter than <paramref name="close"/> standard errors.</summary>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    /// <returns>Whether the curvature at the last step was positive definite and the step short.</returns>
    internal bool Climb(double close, int steps, CancellationToken cancellation)
    {
        for (var taken = 0; taken < steps; taken++, Taken++)
        {
            cancellation.ThrowIfCancellationRequested();
            var definite = Direct();
            Decrement = Math.Sqrt(Math.Max(0, Slope()));
            if (Decrement <= close)
                return definite;
            if (!Search())
                return definite && Decrement < 1e-4;
        }
        return _free.Length == 0;
    }

    private bool Direct()
    {
        var definite = Factor();
        var done = definite;
        for (var raised = Least; !done && raised < Highest; raised *= 4)
        {
            Raise(_likelihood.Basis.Columns, raised);
            done = Factor();
        }
        for (var raised = Least; !done; raised *= 4)
        {
            Raise(0, raised);
            done = Factor();
        }
        for (var a = 0; a < _free.Length; a++)
            _step[a] = Gradient[_free[a]];
        Cholesky.Forward(_factor, _step);
        Cholesky.Back(_factor, _step);
        return definite;
    }

    // What is raised stays: from there on the steps taken tell.
    private void Raise(int from, double by)
    {
        foreach (var place in _free)
            if (place >= from)
                Curvature[place * Point.Length + place] += by;
    }

    private bool Factor()
    {
        var size = _free.Length;
        for (var a = 0; a < size; a++)
        for (var b = 0; b <= a; b++)
            _factor[a * size + b] = Curvature[_free[a] * Point.Length + _free[b]];
        return Cholesky.Factor(_factor, size, 1e-10);
    }

    private double Slope()
    {
        var slope = 0.0;
        for (var a = 0; a < _free.Length; a++)
            slope += Gradient[_free[a]] * _step[a];
        return slope;
    }

    // Takes the step, halved until it gains; a spread no more than doubles at once.
    private bool Search()
    {
        var (length, slope, noise) = (1.0, Slope(), 1e-13 * (1 + Math.Abs(LogLikelihood)));
        for (var a = 0; a < _free.Length; a++)
            if (_free[a] >= _likelihood.Basis.Columns && Math.Abs(_step[a]) > 1 + Math.Abs(Point[_free[a]]))
                length = Math.Min(length, (1 + Math.Abs(Point[_free[a]])) / Math.Abs(_step[a]));
        for (var halving = 0; halving < Halvings; halving++, length /= 2)
        {
            Point.CopyTo(_trial, 0);
            for (var a = 0; a < _free.Length; a++)
                _trial[_free[a]] += length * _step[a];
            var there = _likelihood.At(_trial, _trialGradient);
            if (!(there - LogLikelihood >= 1e-4 * length * slope - noise))
                continue;
            Learn(length);
            _trial.CopyTo(Point, 0);
            _trialGradient.CopyTo(Gradient, 0);
            LogLikelihood = there;
            return true;
        }
        return false;
    }

    // What the gradient's change along the step says of the curvature.
    private void Learn(double length)
    {
        var (size, all) = (_free.Length, Point.Length);
        Span<double> bent = stackalloc double[size];
        var (expected, seen) = (0.0, 0.0);
        for (var a = 0; a < size; a++)
        {
            for (var b = 0; b < size; b++)
                bent[a] += Curvature[_free[a] * all + _free[b]] * length * _step[b];
            expected += bent[a] * length * _step[a];
            seen += (Gradient[_free[a]] - _trialGradient[_free[a]]) * length * _step[a];
        }
        if (!(expected > 0))
            return;
        var share = seen >= Damping * expected ? 1 : (1 - Damping) * expected / (expected - seen);
        var along = share * seen + (1 - share) * expected;
        Span<double> change = stackalloc double[size];
        for (var a = 0; a < size; a++)
            change[a] = share * (Gradient[_free[a]] - _trialGradient[_free[a]]) + (1 - share) * bent[a];
        for (var a = 0; a < size; a++)
        for (var b = 0; b < size; b++)
            Curvature[_free[a] * all + _free[b]] += change[a] * change[b] / along - bent[a] * bent[b] / expected;
    }
}
