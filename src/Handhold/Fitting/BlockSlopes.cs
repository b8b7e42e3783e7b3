using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>The log integrand of a block at a place among the numbers of its upper levels, its gradient and curvature, as a search moves it.</summary>
internal sealed class BlockSlopes
{
    private const double Same = 1e-6; // of a direction's length, what is too little to be another
    private readonly VaryingIntegral _integral;
    private readonly VaryingFrames _frames;
    private readonly ImmutableArray<int> _finest;
    private readonly Way[][] _ways;
    private readonly double[] _last;
    private readonly double[] _step;
    private readonly double[] _above;
    private readonly double[] _first;
    private readonly double[] _second;
    private readonly double[] _shares;

    internal BlockSlopes(
        VaryingIntegral integral,
        VaryingFrames frames,
        ImmutableArray<int> offsets,
        ImmutableArray<LevelLoading> loadings,
        LevelBlock block,
        BlockTop start
    )
    {
        (_integral, _frames, _finest) = (integral, frames, block.Finest);
        (Z, Levels) = ((double[])start.Z.Clone(), (LevelTop[])start.Levels.Clone());
        (Gradient, Curvature, _last, _step) = (
            new double[Z.Length],
            new double[Z.Length * Z.Length],
            new double[Z.Length],
            new double[Z.Length]
        );
        _ways = [.. _finest.Select(level => Ways(frames.Levels[level]).ToArray())];
        var width = 2 * _finest.Max(level => frames.Levels[level].Length);
        (_above, _first, _second, _shares) = (new double[width], new double[width], new double[width * width], new double[width / 2]);

        IEnumerable<Way> Ways(ImmutableArray<LevelPart> parts)
        {
            for (var p = 0; p < parts.Length; p++)
            for (var i = 0; i < parts[p].Above.Length; i++)
            {
                var place = parts[p].Above[i];
                var (turning, shifting) = parts[p].Weights[i];
                var loading = loadings[frames.Upper[place].Grouping];
                yield return new(2 * p, shifting * loading.Tau, turning * loading.Tau, loading.Steep0, offsets[place]);
                if (loading.Dimension == 2)
                    yield return new(2 * p, 0, 0, loading.Steep1, offsets[place] + 1);
            }
        }
    }

    /// <summary>The numbers.</summary>
    internal double[] Z { get; }

    /// <summary>Tops of the finest levels there.</summary>
    internal LevelTop[] Levels { get; }

    internal double[] Gradient { get; }

    /// <summary>Minus the second derivatives, row-major.</summary>
    internal double[] Curvature { get; }

    /// <summary>Orthonormal directions that frames depend on: along all others the integrand is the normal density. A photographer and the only day of his are one. None where there are more than <paramref name="most"/>.</summary>
    internal ImmutableArray<double[]> Directions(int most)
    {
        var (size, count) = (Z.Length, 0);
        var (found, r) = (new double[(most + 1) * size], new double[(most + 1) * (most + 1)]);
        foreach (var ways in _ways)
        foreach (var part in ways.GroupBy(w => w.Part))
        foreach (var of in (Func<Way, double>[])[w => w.Shift, w => w.Turn, w => w.Steep])
        {
            var next = found.AsSpan(count * size, size);
            next.Clear();
            foreach (var way in part)
                next[way.At] += of(way);
            if (Orthonormal.Factor(found.AsSpan(0, (count + 1) * size), size, count + 1, r.AsSpan(0, (count + 1) * (count + 1)), Same) == 0)
                count++;
            if (count > most)
                return [];
        }

        return [.. found.Chunk(size).Take(count)];
    }

    /// <summary>The direction of one number.</summary>
    internal double[] Unit(int place)
    {
        var unit = new double[Z.Length];
        unit[place] = 1;
        return unit;
    }

    /// <summary>Gradient and curvature along some directions.</summary>
    internal (double[] Gradient, double[] Curvature) Along(ImmutableArray<double[]> directions)
    {
        var size = directions.Length;
        var (gradient, curvature) = (new double[size], new double[size * size]);
        for (var i = 0; i < size; i++)
        {
            gradient[i] = Orthonormal.Dot(directions[i], Gradient);
            for (var a = 0; a < Z.Length; a++)
            {
                var bent = Orthonormal.Dot(directions[i], Curvature.AsSpan(a * Z.Length, Z.Length));
                for (var j = 0; j < size; j++)
                    curvature[i * size + j] += bent * directions[j][a];
            }
        }

        return (gradient, curvature);
    }

    /// <summary>Goes along the gradient, so far.</summary>
    internal void Move(double by)
    {
        for (var i = 0; i < Z.Length; i++)
        {
            (_last[i], _step[i]) = (Z[i], by * Gradient[i]);
            Z[i] += _step[i];
        }
    }

    /// <summary>Goes back, so that this share of the last move is left.</summary>
    internal void Return(double share)
    {
        for (var i = 0; i < Z.Length; i++)
            Z[i] = _last[i] + share * _step[i];
    }

    /// <summary>The height here, and its derivatives.</summary>
    /// <param name="nodes">For the finest levels.</param>
    /// <param name="close">How near their tops are sought.</param>
    internal double Evaluate(LevelNodes nodes, double close)
    {
        var height = 0.0;
        Array.Clear(Curvature);
        for (var i = 0; i < Z.Length; i++)
        {
            height -= 0.5 * Z[i] * Z[i];
            Gradient[i] = -Z[i];
            Curvature[i * Z.Length + i] = 1;
        }

        for (var k = 0; k < Levels.Length; k++)
        {
            var width = 2 * _frames.Levels[_finest[k]].Length;
            var first = _first.AsSpan(0, width);
            var second = _second.AsSpan(0, width * width);
            var integral = _integral.Integral(_finest[k], Z, _above);
            Levels[k] = integral.Top(Levels[k], close);
            height += integral.Log(Levels[k], nodes, first, second);
            var parts = _frames.Levels[_finest[k]];
            for (var p = 0; p < parts.Length; p++)
                _shares[p] = parts[p].Motion is null ? 0 : _integral.RotationShare(parts[p], Z);
            foreach (var way in _ways[k])
                way.Add(_ways[k], _shares, first, second, Gradient, Curvature);
        }

        return height;
    }

    /// <summary>The height somewhere near, the finest levels' tops sought there, or following from here to first order.</summary>
    /// <param name="z">The numbers.</param>
    /// <param name="nodes">For the finest levels.</param>
    /// <param name="moves">How those tops follow, as <see cref="Moves"/> has it; null where they are sought.</param>
    internal double Height(ReadOnlySpan<double> z, LevelNodes nodes, TopMoves[]? moves)
    {
        var height = 0.0;
        foreach (var number in z)
            height -= 0.5 * number * number;
        for (var k = 0; k < Levels.Length; k++)
        {
            var integral = _integral.Integral(_finest[k], z, _above);
            var top = moves is null ? integral.Top(Levels[k], LevelIntegral.Near) : moves[k].Follow(Levels[k], _above);
            height += integral.Log(top, nodes, [], []);
        }

        return height;
    }

    /// <summary>How the tops of the finest levels follow numbers above, to first order.</summary>
    internal TopMoves[] Moves()
    {
        var moves = new TopMoves[Levels.Length];
        for (var k = 0; k < Levels.Length; k++)
            moves[k] = _integral.Integral(_finest[k], Z, _above).Moves(Levels[k]);
        return moves;
    }

    /// <summary>How a number above enters a part of a level: by its shift, through its rotation, by its steepening.</summary>
    /// <param name="Part">Twice the part's place.</param>
    /// <param name="Shift">Stops a unit.</param>
    /// <param name="Turn">Stops of the rotation a unit.</param>
    /// <param name="Steep">Growth of log b a unit.</param>
    /// <param name="At">Place of the number.</param>
    private readonly record struct Way(int Part, double Shift, double Turn, double Steep, int At)
    {
        /// <summary>From shifts and steepenings of a level's parts to the numbers above. With w the rotation's share, the half point follows it by w and bends by -2 log 2 w (1 - w).</summary>
        internal void Add(
            Way[] ways,
            double[] shares,
            ReadOnlySpan<double> first,
            ReadOnlySpan<double> second,
            double[] gradient,
            double[] curvature
        )
        {
            var mine = Tau(shares);
            gradient[At] += mine * first[Part] + Steep * first[Part + 1];
            var shift = second[(Part * first.Length)..];
            var steepening = second[((Part + 1) * first.Length)..];
            var bend = Turn == 0 ? 0 : -2 * Math.Log(2) * shares[Part / 2] * (1 - shares[Part / 2]) * Turn * first[Part];
            foreach (var way in ways)
            {
                var theirs = way.Tau(shares);
                curvature[At * gradient.Length + way.At] -=
                    mine * (theirs * shift[way.Part] + way.Steep * shift[way.Part + 1])
                    + Steep * (theirs * steepening[way.Part] + way.Steep * steepening[way.Part + 1])
                    + (way.Part == Part ? bend * way.Turn : 0);
            }
        }

        private double Tau(double[] shares) => Shift + Turn * shares[Part / 2];
    }
}
