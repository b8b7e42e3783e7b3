using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class GroupedLaplace
{
    // The gradient at û, whose factor of H stands.
    private void Differentiate(Span<double> gradient)
    {
        _factor.Invert();
        Array.Clear(_step);
        Span<double> inverse = stackalloc double[_width * _width];
        for (var k = 0; k < _starts.Length - 1; k++)
        {
            ReadInverse(k, inverse);
            for (var p = _starts[k]; p < _starts[k + 1]; p++)
            {
                var loading = _loadings.AsSpan(p * _width, _width);
                var leverage = 0.0;
                for (var a = 0; a < _width; a++)
                    leverage += loading[a] * Orthonormal.Dot(inverse.Slice(a * _width, _width), loading);
                _change[p] *= -0.5 * leverage;
                for (var a = 0; a < _width; a++)
                    _step[_coordinates[k * _width + a]] += _change[p] * loading[a];
            }
        }
        _factor.Solve(_step);
        gradient.Clear();
        for (var k = 0; k < _starts.Length - 1; k++)
        {
            ReadInverse(k, inverse);
            for (var p = _starts[k]; p < _starts[k + 1]; p++)
                AddRow(k, p, inverse, gradient);
        }
    }

    private void AddRow(int kind, int place, ReadOnlySpan<double> inverse, Span<double> gradient)
    {
        var coordinates = _coordinates.AsSpan(kind * _width, _width);
        var loading = _loadings.AsSpan(place * _width, _width);
        var moved = 0.0;
        for (var a = 0; a < _width; a++)
            moved += loading[a] * _step[coordinates[a]];
        var pull = _score[place] + _change[place] - _weight[place] * moved;
        var basis = _basis.Row(_first + place);
        for (var j = 0; j < basis.Length; j++)
            gradient[j] += pull * basis[j];
        var (at, spread) = (0, _basis.Columns);
        for (var t = 0; t < _effects.Length; t++)
        {
            // λ(r, c) loads z̃(r) on the u of column c.
            for (var r = 0; r < _effects[t].Size; r++)
            for (var (c, z) = (0, Column(place, t, r)); c <= r; c++)
            {
                var j = coordinates[at + c];
                var weighed = _weight[place] * Orthonormal.Dot(inverse.Slice((at + c) * _width, _width), loading);
                gradient[spread++] += z * (pull * Top[j] + _score[place] * _step[j] - weighed);
            }
            at += _effects[t].Size;
        }
    }

    // The part of H⁻¹ that the rows of a kind touch, both triangles.
    private void ReadInverse(int kind, Span<double> inverse)
    {
        var pairs = _width * (_width + 1) / 2;
        var places = _places.AsSpan(kind * pairs, pairs);
        var place = 0;
        for (var a = 0; a < _width; a++)
        for (var b = 0; b <= a; b++)
            inverse[a * _width + b] = inverse[b * _width + a] = _factor.Inverse[places[place++]];
    }
}
