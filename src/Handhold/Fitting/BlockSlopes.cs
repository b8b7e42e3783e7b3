using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>The log integrand of a block at a place among the numbers of its upper levels, its gradient and curvature, as a search moves it.</summary>
internal sealed class BlockSlopes
{
    private readonly VaryingIntegral _integral;
    private readonly VaryingFrames _frames;
    private readonly ImmutableArray<int> _finest;
    private readonly Way[][] _ways;
    private readonly double[] _last;
    private readonly double[] _step;
    private readonly double[] _above;
    private readonly double[] _first;
    private readonly double[] _second;

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
        (_above, _first, _second) = (new double[width], new double[width], new double[width * width]);

        IEnumerable<Way> Ways(ImmutableArray<LevelPart> parts)
        {
            for (var p = 0; p < parts.Length; p++)
                foreach (var place in parts[p].Above)
                {
                    var loading = loadings[frames.Upper[place].Grouping];
                    yield return new(2 * p, loading.Tau, loading.Steep0, offsets[place]);
                    if (loading.Dimension == 2)
                        yield return new(2 * p, 0, loading.Steep1, offsets[place] + 1);
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
            foreach (var way in _ways[k])
                way.Add(_ways[k], first, second, Gradient, Curvature);
        }

        return height;
    }

    /// <summary>The height somewhere near.</summary>
    internal double Height(ReadOnlySpan<double> z, LevelNodes nodes)
    {
        var height = 0.0;
        foreach (var number in z)
            height -= 0.5 * number * number;
        for (var k = 0; k < Levels.Length; k++)
        {
            var integral = _integral.Integral(_finest[k], z, _above);
            height += integral.Log(integral.Top(Levels[k], LevelIntegral.Near), nodes, [], []);
        }

        return height;
    }

    /// <summary>How a number above enters a part of a level: by its shift, by its steepening.</summary>
    /// <param name="Part">Twice the part's place.</param>
    /// <param name="Tau">Stops a unit.</param>
    /// <param name="Steep">Growth of log b a unit.</param>
    /// <param name="At">Place of the number.</param>
    private readonly record struct Way(int Part, double Tau, double Steep, int At)
    {
        /// <summary>From shifts and steepenings of a level's parts to the numbers above.</summary>
        internal void Add(Way[] ways, ReadOnlySpan<double> first, ReadOnlySpan<double> second, double[] gradient, double[] curvature)
        {
            gradient[At] += Tau * first[Part] + Steep * first[Part + 1];
            var shift = second[(Part * first.Length)..];
            var steepening = second[((Part + 1) * first.Length)..];
            foreach (var (part, tau, steep, to) in ways)
                curvature[At * gradient.Length + to] -=
                    Tau * (tau * shift[part] + steep * shift[part + 1]) + Steep * (tau * steepening[part] + steep * steepening[part + 1]);
        }
    }
}
