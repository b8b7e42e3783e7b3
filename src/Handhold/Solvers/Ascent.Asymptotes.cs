using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class Ascent
{
    // What P's own second derivatives add when an asymptote is free: -(k/P - r/(1-P)) times P'' x xᵀ + F' (x dᵀ + d xᵀ), d = 1 for the ceiling, -1 for the floor.
    private void AddAsymptotes()
    {
        var rows = _at.Length;
        Array.Clear(_reflector);
        if (_freeCeiling)
            _reflector[_columns] = 1;
        if (_freeFloor)
            _reflector[_size - 1] = -1;
        Orthonormal.SolveTransposed(_r, _reflector);
        for (var i = 0; i < rows; i++)
        {
            ref readonly var at = ref _at[i];
            var pull = (_keepers[i] == 0 ? 0 : _keepers[i] / at.Rate) - (_rejects[i] == 0 ? 0 : _rejects[i] / at.Miss);
            var steepness = at.Slope / (Ceiling - Floor);
            for (var j = 0; j < _size; j++)
                _mirror[j] = j < _columns ? _design.Q[j * rows + i] : 0;
            Orthonormal.SolveTransposed(_r, _mirror);
            for (var j = 0; j < _size; j++)
            for (var k = 0; k <= j; k++)
            {
                var bend = at.Curve * _mirror[j] * _mirror[k];
                var cross = steepness * (_mirror[j] * _reflector[k] + _reflector[j] * _mirror[k]);
                _j[j * _size + k] -= pull * (bend + cross);
            }
        }
    }
}
