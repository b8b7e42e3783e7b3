using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>Newton's climb of one problem's (penalised) log-likelihood, in orthonormal columns; owns its workspace, so that steps allocate nothing.</summary>
/// <remarks>
/// Each step factors the weighted design, √m Q = Q₂R₂, and solves J u = z in the coordinates u = R₂ θ, where z = Q₂ᵀ(score/√m) and J, the curvature, is near one: no
/// condition number is squared. Where J is not positive definite the step is u = z, which still climbs. √(zᵀu), the step's length in standard errors, ends
/// the climb: the last step is taken once it is below 1e-9, or what rounding leaves of an objective beyond 1e10.
/// </remarks>
internal sealed partial class Ascent
{
    private const double Close = 1e-9;

    // A slope of the root of the objective's size is found to this share of it.
    private const double Rounding = 1e-14;
    private const int Halvings = 50;

    // A squared step of ten standard errors.
    private const double FarAway = 100;

    // So far down a complementary log-log has no slope left to climb by.
    private const double Endless = 1e98;

    private readonly Link _link;
    private readonly int[] _keepers;
    private readonly int[] _rejects;
    private readonly double[] _offset;
    private readonly OrthonormalDesign _design;
    private readonly bool _penalised;
    private readonly bool _freeCeiling;
    private readonly bool _freeFloor;
    private readonly int _columns;
    private readonly int _size;
    private readonly RatePoint[] _at;
    private readonly double[] _trial;
    private bool _leapt;

    /// <summary>The climb of a problem whose asymptotes are fixed where they are not free.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="design">Its design.</param>
    /// <param name="penalised">Whether Jeffreys' penalty is added.</param>
    /// <param name="ceiling">The ceiling, or where to start when it is free.</param>
    /// <param name="floor">The floor, or where to start when it is free.</param>
    /// <param name="free">Whether the problem's asymptotes without a value are free; else they stay.</param>
    internal Ascent(
        BinomialProblem problem,
        OrthonormalDesign design,
        bool penalised,
        double ceiling,
        double floor,
        (bool Ceiling, bool Floor) free
    )
    {
        (_link, _design, _penalised) = (problem.Link, design, penalised);
        (_keepers, _rejects, _offset) = (problem.Keepers.ToArray(), problem.Frames.ToArray(), problem.Offset.ToArray());
        for (var i = 0; i < _rejects.Length; i++)
            _rejects[i] -= _keepers[i];
        (_freeCeiling, _freeFloor) = free;
        _columns = design.Columns;
        _size = _columns + (_freeCeiling ? 1 : 0) + (_freeFloor ? 1 : 0);
        (Theta, _trial) = (new double[_size], new double[_size]);
        _at = new RatePoint[problem.Rows];
        (_q, _r, _j) = (new double[problem.Rows * _size], new double[_size * _size], new double[_size * _size]);
        (_z, _u, _held, _reflector, _mirror) = (
            new double[_size],
            new double[_size],
            new double[_columns],
            new double[_size],
            new double[_size]
        );
        (_metric, _score) = (new double[problem.Rows], new double[problem.Rows]);
        (_w, _expected) = penalised ? (new double[problem.Rows * _size], new double[_size * _size]) : ([], []);
        _turn = new double[penalised ? _size * _size * _size : 0];
        (Ceiling, Floor) = (ceiling, floor);
    }

    /// <summary>Coefficients of the orthonormal columns, then the free asymptotes.</summary>
    internal double[] Theta { get; }

    internal double Ceiling { get; private set; }

    internal double Floor { get; private set; }

    internal ClimbStart Here => new([.. Theta], Ceiling, Floor, (_freeCeiling, _freeFloor));

    /// <summary>Place of a free ceiling in <see cref="Theta"/>.</summary>
    internal int? CeilingPlace => _freeCeiling ? _columns : null;

    /// <summary>Place of a free floor in <see cref="Theta"/>.</summary>
    internal int? FloorPlace => _freeFloor ? _size - 1 : null;

    /// <summary>What is maximised, at the last point.</summary>
    internal double Objective { get; private set; }

    internal int Steps { get; private set; }

    /// <summary>Whether the objective was curved every way at the last point a step was taken from.</summary>
    internal bool IsDefinite => _definite;

    /// <summary>Length of the last step in standard errors.</summary>
    internal double Decrement { get; private set; }

    /// <summary>Holds a contrast of the coefficients from now on, and starts at the point of least length that meets it, or at the nearest to where it is.</summary>
    internal void Hold(ReadOnlySpan<double> contrast, double value)
    {
        contrast.CopyTo(_held);
        _design.ToContrast(_held);
        _restricted = true;
        var miss = (value - Orthonormal.Dot(_held, Theta)) / Orthonormal.Dot(_held, _held);
        for (var j = 0; j < _columns; j++)
            Theta[j] += miss * _held[j];
    }

    /// <summary>Climbs from where it stands.</summary>
    internal AscentEnd Climb(int allowed)
    {
        if (_freeCeiling)
            Theta[_columns] = Ceiling;
        if (_freeFloor)
            Theta[_size - 1] = Floor;
        (Objective, Decrement) = (Evaluate(Theta), double.PositiveInfinity);
        var (previous, fast, slow) = (double.PositiveInfinity, true, 0);
        for (Steps = 1; Steps <= allowed; Steps++)
        {
            if (!(Math.Abs(Objective) < Endless))
                return AscentEnd.Stalled;
            if (AtBound || !Direct())
                return AscentEnd.Flat;
            Decrement = Math.Sqrt(Math.Max(0, Orthonormal.Dot(_z, _u)));
            // Near a maximum each step is the square of the last, until rounding; on a plateau all shrink alike.
            var ratio = Decrement / previous;
            fast = ratio < 0.1 || (fast && Decrement < 1e-3);
            slow = Decrement < 1e-6 && ratio is > 0.3 and < 0.9 ? slow + 1 : 0;
            Unfold();
            if (Decrement <= Close + Rounding * Math.Sqrt(Math.Abs(Objective)) || slow == 3 || (Decrement < 1e-6 && ratio >= 0.9))
            {
                Move(Reach());
                Settle(_trial);
                return _definite && fast && slow < 3 ? AscentEnd.Converged : AscentEnd.Flat;
            }
            if (!Search(Decrement * Decrement) && !Search(Plain()))
                return Decrement < 1e-5 && _definite && fast ? AscentEnd.Converged : AscentEnd.Stalled;
            // A leap says nothing about how steps shrink.
            (previous, fast) = _leapt ? (0, false) : (Decrement, fast);
        }
        return AscentEnd.Stalled;
    }

    // A free asymptote that has run to its bound: the climb with it fixed there goes on.
    private bool AtBound => (_freeCeiling && Ceiling > 1 - 1e-9) || (_freeFloor && Floor < 1e-9) || Ceiling - Floor < 1e-9;

    // The step in the coordinates of Theta.
    private void Unfold()
    {
        Orthonormal.Solve(_r, _u);
        Straighten();
    }

    // Rounding must not move what is held.
    private void Straighten()
    {
        if (!_restricted)
            return;
        var drift = Orthonormal.Dot(_held, _u.AsSpan(0, _columns)) / Orthonormal.Dot(_held, _held);
        for (var j = 0; j < _columns; j++)
            _u[j] -= drift * _held[j];
    }

    // A step of each coordinate by itself, for where rows weigh so unequally that rounding hides Newton's; returns its slope.
    private double Plain()
    {
        var slope = 0.0;
        for (var j = 0; j < _columns; j++)
        {
            var (pull, metric) = (0.0, 0.0);
            for (var i = 0; i < _at.Length; i++)
            {
                var q = _design.Q[j * _at.Length + i];
                (pull, metric) = (pull + q * _score[i], metric + q * q * _metric[i]);
            }
            (_z[j], _u[j]) = (pull, metric > LeastMetric ? pull / metric : 0);
        }
        _u.AsSpan(_columns).Clear();
        Straighten();
        for (var j = 0; j < _columns; j++)
            slope += _z[j] * _u[j];
        return slope;
    }

    // Halves the step until the objective gains a little of what the slope promises, rounding aside; far away doubles it while that helps.
    private bool Search(double slope)
    {
        var length = Reach();
        var noise = 1e-14 * (1 + Math.Abs(Objective));
        _leapt = false;
        for (var halving = 0; halving < Halvings; halving++, length /= 2)
        {
            var there = At(length);
            if (!(there - Objective >= 1e-4 * length * slope - noise))
                continue;
            if (halving == 0 && slope > FarAway && length == 1 && !_freeCeiling && !_freeFloor)
            {
                for (var further = At(2); further > there; further = At(2 * length))
                    (there, length, _leapt) = (further, 2 * length, true);
                At(length);
            }
            Settle(_trial);
            Objective = there;
            return true;
        }
        Evaluate(Theta);
        return false;
    }

    private double At(double length)
    {
        Move(length);
        return Evaluate(_trial);
    }

    private void Move(double length)
    {
        for (var j = 0; j < _size; j++)
            _trial[j] = Theta[j] + length * _u[j];
    }

    // The share of the step that keeps nine tenths of the way to 1 for the ceiling, to 0 for the floor, and to each other.
    private double Reach()
    {
        var (ceilingStep, floorStep) = (_freeCeiling ? _u[_columns] : 0, _freeFloor ? _u[_size - 1] : 0);
        var reach = 1.0;
        if (ceilingStep > 0)
            reach = Math.Min(reach, 0.9 * (1 - Ceiling) / ceilingStep);
        if (floorStep < 0)
            reach = Math.Min(reach, 0.9 * Floor / -floorStep);
        if (floorStep > ceilingStep)
            reach = Math.Min(reach, 0.9 * (Ceiling - Floor) / (floorStep - ceilingStep));
        return reach;
    }

    private void Settle(ReadOnlySpan<double> theta)
    {
        theta.CopyTo(Theta);
        Place(theta);
    }

    private void Place(ReadOnlySpan<double> theta)
    {
        if (_freeCeiling)
            Ceiling = theta[_columns];
        if (_freeFloor)
            Floor = theta[_size - 1];
    }

    // Of a row, as a number that sums of two int never overflow.
    private double Frames(int row) => _keepers[row] + (double)_rejects[row];

    private double Evaluate(ReadOnlySpan<double> theta)
    {
        Place(theta);
        var sum = 0.0;
        for (var i = 0; i < _at.Length; i++)
        {
            var eta = _offset.Length == 0 ? 0 : _offset[i];
            for (var j = 0; j < _columns; j++)
                eta += _design.Q[j * _at.Length + i] * theta[j];
            _at[i] = new(_link, eta, Ceiling, Floor);
            sum += _at[i].LogLikelihood(_keepers[i], _rejects[i]);
        }
        LogLikelihood = sum;
        return _penalised ? sum + Penalty() : sum;
    }

    /// <summary>The log-likelihood at the last point, without penalty.</summary>
    internal double LogLikelihood { get; private set; }
}
