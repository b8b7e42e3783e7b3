using System.Collections.Immutable;

namespace Handhold.Kernels;

/// <summary>Points that fill the unit cube evenly: Sobol's sequence in base 2, each coordinate digitally shifted.</summary>
/// <remarks>
/// Sources: Sobol (1967), USSR Computational Mathematics and Mathematical Physics 7(4), 86-112; primitive polynomials and initial direction numbers of Joe
/// and Kuo (2008), SIAM Journal on Scientific Computing 30, 2635-2654. Coordinates beyond the tabulated ones are frac(shift + i √p), p the primes in turn:
/// Richtmyer (1951). A uniform shift makes every point uniform, so that sums over the points are unbiased.
/// </remarks>
internal sealed class Sobol
{
    private const int Bits = 32;
    private readonly uint[][] _directions;
    private readonly double[] _steps;
    private readonly ImmutableArray<ulong> _shift;

    /// <summary>Degree, inner coefficients and initial numbers of the polynomials, from the second coordinate on.</summary>
    private static ImmutableArray<(int Degree, int Inner, ImmutableArray<uint> Initial)> Polynomials { get; } =
    [
        (1, 0, [1]),
        (2, 1, [1, 3]),
        (3, 1, [1, 3, 1]),
        (3, 2, [1, 1, 1]),
        (4, 1, [1, 1, 3, 3]),
        (4, 4, [1, 3, 5, 13]),
        (5, 2, [1, 1, 5, 5, 17]),
        (5, 4, [1, 1, 5, 5, 5]),
        (5, 7, [1, 1, 7, 11, 19]),
        (5, 11, [1, 1, 5, 1, 1]),
        (5, 13, [1, 1, 1, 3, 11]),
        (5, 14, [1, 3, 5, 5, 31]),
        (6, 1, [1, 3, 3, 9, 7, 49]),
        (6, 13, [1, 1, 1, 15, 21, 21]),
        (6, 16, [1, 3, 1, 13, 27, 49]),
        (6, 19, [1, 1, 1, 15, 7, 5]),
        (6, 22, [1, 3, 1, 15, 13, 25]),
        (6, 25, [1, 1, 5, 5, 19, 61]),
        (7, 1, [1, 3, 7, 11, 23, 15, 103]),
        (7, 4, [1, 3, 7, 13, 13, 15, 69]),
    ];

    /// <param name="shift">64 uniform bits for each coordinate.</param>
    internal Sobol(ImmutableArray<ulong> shift)
    {
        _shift = shift;
        _directions = [.. Enumerable.Range(0, Math.Min(shift.Length, Polynomials.Length + 1)).Select(Directions)];
        _steps = [.. Primes().Take(Math.Max(0, shift.Length - _directions.Length)).Select(p => Math.Sqrt(p) % 1)];
    }

    /// <summary>Writes point <paramref name="index"/>, from 0 up; every coordinate strictly between 0 and 1.</summary>
    internal void Write(int index, Span<double> point)
    {
        for (var j = 0; j < _directions.Length; j++)
        {
            var bits = (uint)(_shift[j] >> Bits);
            for (var (rest, k) = ((uint)index, 0); rest != 0; rest >>= 1, k++)
                if ((rest & 1) == 1)
                    bits ^= _directions[j][k];
            point[j] = (bits + 0.5) / (1UL << Bits);
        }

        for (var j = _directions.Length; j < point.Length; j++)
        {
            var at = (_shift[j] >> Bits) / (double)(1UL << Bits) + index * _steps[j - _directions.Length];
            point[j] = Math.Clamp(at - Math.Floor(at), 1e-16, 1 - 1e-16);
        }
    }

    private static uint[] Directions(int coordinate)
    {
        var v = new uint[Bits];
        if (coordinate == 0)
        {
            for (var k = 0; k < Bits; k++)
                v[k] = 1U << (Bits - 1 - k);
            return v;
        }

        var (degree, inner, initial) = Polynomials[coordinate - 1];
        for (var k = 0; k < Bits; k++)
        {
            if (k < degree)
            {
                v[k] = initial[k] << (Bits - 1 - k);
                continue;
            }

            v[k] = v[k - degree] ^ (v[k - degree] >> degree);
            for (var i = 1; i < degree; i++)
                if (((inner >> (degree - 1 - i)) & 1) == 1)
                    v[k] ^= v[k - i];
        }

        return v;
    }

    private static IEnumerable<int> Primes()
    {
        for (var n = 2; ; n++)
            if (Enumerable.Range(2, (int)Math.Sqrt(n) - 1).All(d => n % d != 0))
                yield return n;
    }
}
