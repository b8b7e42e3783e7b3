using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class GroupedLaplace
{
    private const int Steps = 200;

    // Of û's last step; the determinant errs by as much.
    private const double Close = 1e-10;

    // The rows' fixed parts and loadings at a point.
    private void Load(ReadOnlySpan<double> point)
    {
        for (var p = 0; p < _order.Length; p++)
        {
            var row = _order[p];
            _fixed[p] = Orthonormal.Dot(Basis.Row(row), point[..Basis.Columns]) + (_rows.Offset.IsEmpty ? 0 : _rows.Offset.Span[row]);
            var (place, spread) = (p * _width, Basis.Columns);
            foreach (var effect in _effects)
            {
                if (effect.Size == 1)
                    _loadings[place] = point[spread] * _columns[place];
                else
                {
                    _loadings[place] = point[spread] * _columns[place] + point[spread + 1] * _columns[place + 1];
                    _loadings[place + 1] = point[spread + 2] * _columns[place + 1];
                }
                (place, spread) = (place + effect.Size, spread + effect.Spreads);
            }
        }
    }

    // h at its top by Newton's method, from where the last top was; leaves H's factor and the rows' derivatives there.
    private double FindTop()
    {
        var before = double.NegativeInfinity;
        for (var tries = 0; tries < Steps; tries++)
        {
            var height = Weigh();
            if (height < before - 1e-12 * Math.Abs(before))
            {
                for (var j = 0; j < Top.Length; j++)
                {
                    _step[j] /= 2;
                    Top[j] -= _step[j];
                }
                continue;
            }
            before = height;
            if (!_factor.Factor())
                break;
            _slope.CopyTo(_step, 0);
            _factor.Solve(_step);
            if (Math.Sqrt(Math.Max(0, Orthonormal.Dot(_slope, _step))) < Close)
                return height;
            for (var j = 0; j < Top.Length; j++)
                Top[j] += _step[j];
        }
        Array.Clear(Top);
        return double.NegativeInfinity;
    }

    // h, its slope and H at û.
    private double Weigh()
    {
        var (height, pairs) = (0.0, _width * (_width + 1) / 2);
        Array.Clear(_factor.Values);
        for (var j = 0; j < Top.Length; j++)
        {
            height -= 0.5 * Top[j] * Top[j];
            _slope[j] = -Top[j];
            _factor.Values[_diagonal[j]] = 1;
        }
        Span<double> u = stackalloc double[_width];
        for (var k = 0; k < _starts.Length - 1; k++)
        {
            var coordinates = _coordinates.AsSpan(k * _width, _width);
            var places = _places.AsSpan(k * pairs, pairs);
            for (var a = 0; a < _width; a++)
                u[a] = Top[coordinates[a]];
            for (var p = _starts[k]; p < _starts[k + 1]; p++)
            {
                var loading = _loadings.AsSpan(p * _width, _width);
                var (kept, lost) = Counts(p);
                RatePoint at = new(_rows.Link, _fixed[p] + Orthonormal.Dot(loading, u), 1, 0);
                height += at.LogLikelihood(kept, lost);
                (_score[p], _weight[p]) = (at.Score(kept, lost), at.Observed(kept, lost));
                _change[p] = at.ObservedChange(kept, lost);
                var place = 0;
                for (var a = 0; a < _width; a++)
                {
                    _slope[coordinates[a]] += _score[p] * loading[a];
                    var weighted = _weight[p] * loading[a];
                    for (var b = 0; b <= a; b++)
                        _factor.Values[places[place++]] += weighted * loading[b];
                }
            }
        }
        return height;
    }

    private (int Kept, int Lost) Counts(int place)
    {
        var kept = _rows.Keepers.Span[_order[place]];
        return (kept, _rows.Frames.Span[_order[place]] - kept);
    }
}
