using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>Newton's climb of a <see cref="ClusteredLikelihood"/>; owns its workspace, so that steps allocate nothing.</summary>
/// <remarks>
/// Where the curvature is not positive definite its diagonal is raised until it is. Since the likelihood is even in the spread, none is a top or a saddle:
/// from the saddle a climb steps aside.
/// </remarks>
internal sealed class ClusteredClimb
{
    private const double Close = 1e-9;
    private const int Steps = 200;
    private const int Halvings = 40;

    // A spread below this is none: the climb to none ends with the square of its last step.
    private const double NoSpread = 1e-5;
    private const double Aside = 0.5;

    // What a curvature is raised by, from and to.
    private const double Least = 1e-3;
    private const double Highest = 1e9;

    private readonly ClusteredLikelihood _likelihood;
    private readonly HeldHeight? _height;
    private readonly bool _spreadHeld;
    private readonly int _columns;
    private readonly double[] _trial;
    private readonly double[] _gradient;
    private readonly double[] _curvature;
    private readonly double[] _factor;
    private readonly double[] _step;

    /// <param name="likelihood">What is climbed.</param>
    /// <param name="height">What the first θ times the likelihood's length is held at; null: it is free.</param>
    /// <param name="spreadHeld">Whether the spread stays where it starts.</param>
    internal ClusteredClimb(ClusteredLikelihood likelihood, HeldHeight? height, bool spreadHeld)
    {
        (_likelihood, _height, _spreadHeld, _columns) = (likelihood, height, spreadHeld, likelihood.Columns);
        var size = _columns + 1;
        (Theta, _trial, _gradient) = (new double[size], new double[size], new double[size]);
        (_curvature, _factor, _step) = (new double[size * size], new double[size * size], new double[size]);
    }

    /// <summary>Coefficients in the likelihood's coordinates, then the spread.</summary>
    internal double[] Theta { get; }

    internal double Spread => Theta[_columns];

    internal double LogLikelihood { get; private set; }

    internal int Taken { get; private set; }

    internal double Decrement { get; private set; }

    /// <summary>Minus the second derivatives at the end, both triangles.</summary>
    internal ReadOnlySpan<double> Curvature => _curvature;

    private int First => _height is null ? 0 : 1;

    private int Free => _columns + (_spreadHeld ? 0 : 1) - First;

    /// <summary>Climbs from where it stands; whether it arrived.</summary>
    internal bool Climb()
    {
        Hold(Theta);
        Differentiate();
        for (Taken = 1; Taken <= Steps; Taken++)
        {
            if (Free == 0)
                return true;
            if (OnSaddle() && StepAside())
            {
                Differentiate();
                continue;
            }
            var definite = Direct();
            Decrement = Math.Sqrt(Math.Max(0, Slope()));
            if (Decrement <= Close || !Search())
                return definite && Decrement < 1e-4;
            Differentiate();
        }
        return false;
    }

    // Whether more spread would be better though its slope is zero.
    private bool OnSaddle() => !_spreadHeld && Math.Abs(Spread) < NoSpread && _curvature[^1] < 0;

    private bool StepAside()
    {
        for (var spread = Aside; spread > NoSpread; spread /= 2)
        {
            Theta.CopyTo(_trial, 0);
            _trial[_columns] = spread;
            Hold(_trial);
            if (!(_likelihood.At(_trial) > LogLikelihood))
                continue;
            _trial.CopyTo(Theta, 0);
            return true;
        }
        return false;
    }

    private void Hold(Span<double> theta)
    {
        if (_height is not null)
            theta[0] = _height(theta[_columns]).Value / _likelihood.Length;
    }

    private void Differentiate()
    {
        var size = _columns + 1;
        LogLikelihood = _likelihood.At(Theta, _gradient, _curvature);
        if (_height is not null)
            AlongHeight(_height(Spread));
        for (var a = 0; a < size; a++)
        for (var b = 0; b < a; b++)
            _curvature[b * size + a] = _curvature[a * size + b];
    }

    // The first θ moves with the spread.
    private void AlongHeight((double Value, double Slope, double Bend) height)
    {
        var (size, last) = (_columns + 1, _columns * (_columns + 1));
        var (slope, bend) = (height.Slope / _likelihood.Length, height.Bend / _likelihood.Length);
        _curvature[last + _columns] += 2 * slope * _curvature[last] + slope * slope * _curvature[0] - bend * _gradient[0];
        for (var j = 1; j < _columns; j++)
            _curvature[last + j] += slope * _curvature[j * size];
        _gradient[_columns] += slope * _gradient[0];
    }

    // The step; whether the curvature needed no raising, of the spread alone where that is enough.
    private bool Direct()
    {
        var definite = Factor(0, 0);
        var done = definite;
        for (var raised = Least; !done && !_spreadHeld && raised < Highest; raised *= 4)
            done = Factor(0, raised);
        for (var raised = Least; !done; raised *= 4)
            done = Factor(raised, raised);
        for (var a = 0; a < Free; a++)
            _step[a] = _gradient[First + a];
        Cholesky.Forward(_factor.AsSpan(0, Free * Free), _step.AsSpan(0, Free));
        Cholesky.Back(_factor.AsSpan(0, Free * Free), _step.AsSpan(0, Free));
        return definite;
    }

    private bool Factor(double raised, double spreadRaised)
    {
        var (size, free) = (_columns + 1, Free);
        for (var a = 0; a < free; a++)
        {
            for (var b = 0; b <= a; b++)
                _factor[a * free + b] = _curvature[(First + a) * size + First + b];
            _factor[a * free + a] += a == free - 1 ? spreadRaised : raised;
        }
        return Cholesky.Factor(_factor.AsSpan(0, free * free), free, 1e-10);
    }

    private double Slope()
    {
        var slope = 0.0;
        for (var a = 0; a < Free; a++)
            slope += _gradient[First + a] * _step[a];
        return slope;
    }

    // Takes the step, halved until it gains; far away in spread no more than doubles it.
    private bool Search()
    {
        var (length, slope, noise) = (1.0, Slope(), 1e-13 * (1 + Math.Abs(LogLikelihood)));
        var spreadStep = _spreadHeld ? 0 : Math.Abs(_step[Free - 1]);
        if (spreadStep > 1 + Math.Abs(Spread))
            length = (1 + Math.Abs(Spread)) / spreadStep;
        for (var halving = 0; halving < Halvings; halving++, length /= 2)
        {
            Theta.CopyTo(_trial, 0);
            for (var a = 0; a < Free; a++)
                _trial[First + a] += length * _step[a];
            Hold(_trial);
            if (!(_likelihood.At(_trial) - LogLikelihood >= 1e-4 * length * slope - noise))
                continue;
            _trial.CopyTo(Theta, 0);
            return true;
        }
        return false;
    }
}
