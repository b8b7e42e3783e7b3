using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>Draws of the levels' numbers beside the points of a posterior, with the ratios that make them exact.</summary>
/// <remarks>Upper levels from a t about the top of Laplace's method, finest levels from one about theirs; a draw weighs what the density there is to that of the t, by the integrals that the point's weight came from.</remarks>
internal sealed class LevelSampler
{
    private const double LogTwoPi = 1.8378770664093454836;
    private const int MostKept = 64;

    private static IntegralRule Rule { get; } = IntegralRule.Usual with { Finest = LevelNodes.Of(7) }; // a ratio's digits matter less than a weight's

    private readonly VaryingDensity _density;
    private readonly ImmutableArray<(int Index, VaryingPoint Point)> _points;
    private readonly int _beside;
    private readonly int _size;
    private readonly Seed _seed;
    private readonly int[] _blockOfUpper;
    private readonly int[] _blockOfFinest;
    private readonly Recent<int, Lazy<LevelDraw[][]>> _kept;

    /// <param name="density">The density, searching from its top.</param>
    /// <param name="points">Places in the sample, and parameters there.</param>
    /// <param name="beside">Draws beside each point; they stand next to each other.</param>
    /// <param name="size">Points of the sample.</param>
    /// <param name="seed">The seed.</param>
    internal LevelSampler(VaryingDensity density, ImmutableArray<(int Index, VaryingPoint Point)> points, int beside, int size, Seed seed)
    {
        (_density, _points, _beside, _size, _seed) = (density, points, beside, size, seed);
        var frames = density.Frames;
        (_blockOfUpper, _blockOfFinest) = (new int[frames.Upper.Length], new int[frames.Levels.Length]);
        for (var b = 0; b < frames.Blocks.Length; b++)
        {
            foreach (var place in frames.Blocks[b].Upper)
                _blockOfUpper[place] = b;
            foreach (var level in frames.Blocks[b].Finest)
                _blockOfFinest[level] = b;
        }

        _kept = new(MostKept, block => new(() => Draw(block)));
    }

    /// <summary>Block of a level, and the draws of its numbers.</summary>
    internal (int Block, ImmutableArray<LevelDraw> Draws) Of(int grouping, int level)
    {
        var frames = _density.Frames;
        if (grouping == frames.Finest)
        {
            var block = _blockOfFinest[level];
            return (block, [.. Block(block)[frames.Blocks[block].Upper.Length + frames.Blocks[block].Finest.IndexOf(level)]]);
        }

        var place = frames.Upper.IndexOf((grouping, level));
        return (_blockOfUpper[place], [.. Block(_blockOfUpper[place])[frames.Blocks[_blockOfUpper[place]].Upper.IndexOf(place)]]);
    }

    /// <summary>Draws of the levels of a block, the upper ones first.</summary>
    internal LevelDraw[][] Block(int block) => _kept[block].Value;

    private LevelDraw[][] Draw(int index)
    {
        var (block, anchor) = (_density.Frames.Blocks[index], _density.Anchors[index]);
        var draws = new LevelDraw[block.Upper.Length + block.Finest.Length][];
        for (var i = 0; i < draws.Length; i++)
            draws[i] = new LevelDraw[_beside * _points.Length];
        var upper = anchor.Z.Length == 0 ? null : Points(anchor.Z.Length, 1 + 2 * (long)index);
        StudentPoints[] finest =
        [
            .. block.Finest.Select(level => Points(_points[0].Point.Loadings[_density.Frames.Finest].Dimension, 2 + 2 * (long)level)),
        ];
        Parallel.For(0, _points.Length, k => Draw(block, anchor, k, upper, finest, draws));
        return draws;
    }

    private StudentPoints Points(int dimension, long stream) =>
        new(dimension, StudentPoints.Usual, _beside * _size, _seed.Stream(stream).Bits, shuffled: true);

    private void Draw(LevelBlock block, BlockTop anchor, int k, StudentPoints? upper, StudentPoints[] finest, LevelDraw[][] draws)
    {
        var (index, point) = _points[k];
        var integral = _density.At(point);
        var top = integral.Of(block, anchor, Rule);
        for (var i = 0; i < _beside; i++)
            Draw(block, integral, top, index + i * _size, point, upper, finest, draws, _beside * k + i);
    }

    private void Draw(
        LevelBlock block,
        VaryingIntegral integral,
        BlockTop top,
        int index,
        VaryingPoint point,
        StudentPoints? upper,
        StudentPoints[] finest,
        LevelDraw[][] draws,
        int k
    )
    {
        var (z, size, ratio) = (top.Z, top.Z.Length, 1.0);
        double[] logs = [.. finest.Select(_ => top.Log)]; // with no upper levels the block is the level
        var levels = (LevelTop[])top.Levels.Clone();
        if (upper is not null)
        {
            upper[index].CopyTo(z = new double[size]);
            Cholesky.Back(top.Factor, z);
            var log = -top.Log - upper.LogDensity(index) - 0.5 * size * LogTwoPi;
            for (var i = 0; i < size; i++)
            {
                z[i] += top.Z[i];
                log -= 0.5 * z[i] * z[i] + Math.Log(top.Factor[i * size + i]);
            }

            for (var l = 0; l < finest.Length; l++)
            {
                var level = integral.Integral(block.Finest[l], z, []);
                levels[l] = level.Top(levels[l]);
                logs[l] = level.Log(levels[l], Rule.Finest, [], []);
                log += logs[l];
            }

            ratio = Math.Exp(log);
            for (var i = 0; i < block.Upper.Length; i++)
            {
                var (loading, at) = (point.Loadings[_density.Frames.Upper[block.Upper[i]].Grouping], _density.Offsets[block.Upper[i]]);
                draws[i][k] = new(ratio, 1, loading.Shift(z.AsSpan(at)), loading.Steepening(z.AsSpan(at)), Open(top.Factor, size, at));
            }
        }

        for (var l = 0; l < finest.Length; l++)
            draws[block.Upper.Length + l][k] = Finest(
                integral.Integral(block.Finest[l], z, []),
                levels[l],
                logs[l],
                finest[l],
                index,
                point,
                ratio
            );
    }

    private LevelDraw Finest(
        LevelIntegral level,
        LevelTop top,
        double logIntegral,
        StudentPoints points,
        int index,
        VaryingPoint point,
        double ratio
    )
    {
        var loading = point.Loadings[_density.Frames.Finest];
        var x = points[index];
        var dimension = loading.Dimension;
        var (z0, z1) = top.At(x[0], dimension == 2 ? x[1] : 0);
        var log = level.LogDensity(z0, z1) - 0.5 * dimension * LogTwoPi - logIntegral - points.LogDensity(index) + top.LogScale(dimension);
        var open = (1 + top.L10 / top.L11 * (top.L10 / top.L11)) / (top.L00 * top.L00);
        return new(ratio, Math.Exp(log), loading.Shift([z0, z1]), loading.Steepening([z0, z1]), open);
    }

    /// <summary>A variance from the factor of a curvature.</summary>
    private static double Open(double[] factor, int size, int at)
    {
        var column = new double[size];
        column[at] = 1;
        Cholesky.Forward(factor, column);
        return column.Sum(c => c * c);
    }
}
