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
        for (var p = 0; p < _fixed.Length; p++)
        {
            _fixed[p] =
                Orthonormal.Dot(_basis.Row(_first + p), point[.._basis.Columns]) + (_rows.Offset.IsEmpty ? 0 : _rows.Offset.Span[p]);
            var (place, spread) = (p * _width, _basis.Columns);
            for (var t = 0; t < _effects.Length; t++)
            {
                _loadings[place] = point[spread] * Column(p, t, 0);
                if (_effects[t].Size > 1)
                {
                    var second = Column(p, t, 1);
                    _loadings[place] += point[spread + 1] * second;
                    _loadings[place + 1] = point[spread + 2] * second;
                }
                (place, spread) = (place + _effects[t].Size, spread + _effects[t].Spreads);
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
        Predict();
        var (height, pairs) = (WeighRows(), _width * (_width + 1) / 2);
        Array.Clear(_factor.Values);
        for (var j = 0; j < Top.Length; j++)
        {
            height -= 0.5 * Top[j] * Top[j];
            _slope[j] = -Top[j];
            _factor.Values[_diagonal[j]] = 1;
        }
        for (var k = 0; k < _starts.Length - 1; k++)
        {
            var coordinates = _coordinates.AsSpan(k * _width, _width);
            var places = _places.AsSpan(k * pairs, pairs);
            for (var p = _starts[k]; p < _starts[k + 1]; p++)
            {
                var loading = _loadings.AsSpan(p * _width, _width);
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

    // The rows' predictors, where their scores will be.
    private void Predict()
    {
        Span<double> u = stackalloc double[_width];
        for (var k = 0; k < _starts.Length - 1; k++)
        {
            for (var a = 0; a < _width; a++)
                u[a] = Top[_coordinates[k * _width + a]];
            for (var p = _starts[k]; p < _starts[k + 1]; p++)
                _score[p] = _fixed[p] + Orthonormal.Dot(_loadings.AsSpan(p * _width, _width), u);
        }
    }

    // The rows' log-likelihood, and its derivatives where their predictors stood.
    private double WeighRows()
    {
        if (_rows.Link == Link.Logit)
            return LogitRows.Weigh(_kept, _lost, _score, _weight, _change);
        var height = 0.0;
        for (var p = 0; p < _score.Length; p++)
        {
            RatePoint at = new(_rows.Link, _score[p], 1, 0);
            height += at.LogLikelihood(_kept[p], _lost[p]);
            (_score[p], _weight[p], _change[p]) = (
                at.Score(_kept[p], _lost[p]),
                at.Observed(_kept[p], _lost[p]),
                at.ObservedChange(_kept[p], _lost[p])
            );
        }
        return height;
    }
}
