using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class Ascent
{
    // Curvature below this share of the expected is not told from none.
    private const double LeastCurvature = 1e-8;

    // Rows that weigh less show nothing, and their ratios overflow.
    private const double LeastMetric = 1e-290;

    private readonly double[] _q;
    private readonly double[] _r;
    private readonly double[] _metric;
    private readonly double[] _score;
    private readonly double[] _j;
    private readonly double[] _z;
    private readonly double[] _u;
    private readonly double[] _held;
    private readonly double[] _reflector;
    private readonly double[] _mirror;
    private bool _restricted;
    private bool _definite;

    // The gradient z and the step u at the last point; false where the weighted design has lost a direction.
    private bool Direct()
    {
        if (!Weigh())
            return false;
        Array.Clear(_z);
        Array.Clear(_j);
        for (var i = 0; i < _at.Length; i++)
            AddRow(i);
        if (_penalised)
            AddTurn();
        else if (_size > _columns)
            AddAsymptotes();
        if (_restricted)
            Restrict();
        _definite = Cholesky.Factor(_j, _size, LeastCurvature);
        _z.CopyTo(_u.AsSpan());
        if (_definite)
        {
            Cholesky.Forward(_j, _u);
            Cholesky.Back(_j, _u);
        }
        if (_restricted)
        {
            Mirror(_u);
            Mirror(_z);
        }
        return true;
    }

    // What a row's steps are measured by: its curvature or expected information, whichever is the larger, and enough that its own score asks for no step beyond a thousand.
    private double Metric(int row)
    {
        ref readonly var at = ref _at[row];
        var expected = Frames(row) * at.Weight;
        if (_size > _columns)
            return expected;
        var (kept, rejects) = (_keepers[row], _rejects[row]);
        var pull = Math.Abs(at.Score(kept, rejects)) + (_penalised ? Math.Abs(Leverage(row) * at.WeightChange) : 0);
        return Math.Max(Math.Max(expected, Math.Abs(at.Observed(kept, rejects))), 1e-3 * pull);
    }

    private bool Weigh()
    {
        var rows = _at.Length;
        for (var i = 0; i < rows; i++)
        {
            var root = Math.Sqrt(_metric[i] = Metric(i));
            for (var j = 0; j < _columns; j++)
                _q[j * rows + i] = root * _design.Q[j * rows + i];
            var variance = _at[i].Rate * _at[i].Miss;
            var spread = variance > 0 ? Math.Sqrt(Frames(i) / variance) : 0;
            if (_freeCeiling)
                _q[_columns * rows + i] = spread * _at[i].F;
            if (_freeFloor)
                _q[(_size - 1) * rows + i] = spread * _at[i].G;
        }
        return Orthonormal.Factor(_q, rows, _size, _r, 0) == 0;
    }

    private void AddRow(int i)
    {
        var rows = _at.Length;
        var (residual, ratio) = _size > _columns ? Residual(i) : Residual(i, _metric[i]);
        for (var j = 0; j < _size; j++)
        {
            var q = _q[j * rows + i];
            _z[j] += q * residual;
            for (var k = 0; k <= j; k++)
                _j[j * _size + k] += ratio * q * _q[k * rows + i];
        }
    }

    // A row's score and curvature in the predictor, the one over the root of its metric, the other over it.
    private (double Score, double Curvature) Residual(int i, double metric)
    {
        ref readonly var at = ref _at[i];
        var (kept, rejects) = (_keepers[i], _rejects[i]);
        _score[i] = 0;
        if (!(metric > LeastMetric))
            return (0, 0);
        var (score, curve) = (at.Score(kept, rejects), at.Observed(kept, rejects));
        if (_penalised)
        {
            var leverage = Leverage(i);
            score += 0.5 * leverage * at.WeightChange;
            curve -= 0.5 * leverage * at.WeightBend;
        }
        _score[i] = score;
        return (score / Math.Sqrt(metric), curve / metric);
    }

    // The same in the rate: a row at the end of its curve still pulls at a free ceiling or floor.
    private (double Score, double Curvature) Residual(int i)
    {
        ref readonly var at = ref _at[i];
        var (kept, rejects) = (_keepers[i], _rejects[i]);
        var (up, down) = (kept == 0 ? 0 : kept / at.Rate, rejects == 0 ? 0 : rejects / at.Miss);
        var metric = Frames(i) / (at.Rate * at.Miss);
        _score[i] = (up - down) * at.Slope;
        if (!(metric < 1 / LeastMetric))
            return (0, 0);
        return ((up - down) / Math.Sqrt(metric), (up == 0 ? 0 : up / at.Rate / metric) + (down == 0 ? 0 : down / at.Miss / metric));
    }

    // Turns the coordinates so that the first is the held contrast, and takes it out.
    private void Restrict()
    {
        Array.Clear(_reflector);
        _held.CopyTo(_reflector.AsSpan());
        Orthonormal.SolveTransposed(_r, _reflector);
        var length = Math.Sqrt(Orthonormal.Dot(_reflector, _reflector));
        _reflector[0] += _reflector[0] < 0 ? -length : length;
        var norm = Math.Sqrt(Orthonormal.Dot(_reflector, _reflector) / 2);
        for (var j = 0; j < _size; j++)
            _reflector[j] /= norm;
        for (var j = 0; j < _size; j++)
        for (var k = 0; k < j; k++)
            _j[k * _size + j] = _j[j * _size + k];
        for (var j = 0; j < _size; j++)
            Mirror(_j.AsSpan(j * _size, _size));
        for (var k = 0; k < _size; k++)
        {
            for (var j = 0; j < _size; j++)
                _mirror[j] = _j[j * _size + k];
            Mirror(_mirror);
            for (var j = 0; j < _size; j++)
                _j[j * _size + k] = j == 0 || k == 0 ? (j == k ? 1 : 0) : _mirror[j];
        }
        Mirror(_z);
        _z[0] = 0;
    }

    // x - w (w·x) for the reflector w of length √2.
    private void Mirror(Span<double> x)
    {
        var along = Orthonormal.Dot(_reflector, x);
        for (var j = 0; j < _size; j++)
            x[j] -= along * _reflector[j];
    }
}
