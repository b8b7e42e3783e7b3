using Handhold.Kernels;
using Handhold.Randomness;

namespace Handhold.Fitting;

/// <summary>The law of the keepers among frames of levels that vary, when other frames of theirs have been seen.</summary>
/// <remarks>
/// Given the parameters, blocks are independent, and so the law of their sum is exact once each block's is known. That is averaged over draws of the block's levels from
/// the normals of their tops, weighted by what the density there is to the normals'.
/// </remarks>
/// <param name="seen">The density of the frames seen.</param>
/// <param name="held">The others, of the same levels.</param>
internal sealed class VaryingCounts(VaryingDensity seen, VaryingFrames held)
{
    private const int Draws = 16;

    /// <summary>The law at a point, over what its levels may be.</summary>
    internal CountLaw Of(VaryingPoint point, RandomStream chance)
    {
        var (integral, sum) = (seen.At(point), CountLaw.Nothing);
        for (var b = 0; b < held.Blocks.Length; b++)
        {
            if (!Holds(held.Blocks[b]))
                continue;
            var top = integral.Of(held.Blocks[b], seen.Anchors[b], IntegralRule.Few);
            var (logs, laws) = (new double[Draws], new CountLaw[Draws]);
            for (var m = 0; m < Draws; m++)
                (logs[m], laws[m]) = Draw(point, integral, held.Blocks[b], top, chance);
            var total = Elementary.LogSum(logs);
            sum = sum.Plus(CountLaw.Mixed(Array.ConvertAll(logs, log => Math.Exp(log - total)), laws));
        }

        return sum;
    }

    /// <summary>The law at the point whose tops the density searches from, its levels there.</summary>
    internal CountLaw AtTop(VaryingPoint point)
    {
        var (integral, sum) = (seen.At(point), CountLaw.Nothing);
        for (var b = 0; b < held.Blocks.Length; b++)
            if (Holds(held.Blocks[b]))
                sum = sum.Plus(Draw(point, integral, held.Blocks[b], seen.Anchors[b], null).Law);
        return sum;
    }

    private bool Holds(LevelBlock block) =>
        block.Finest.Any(level => held.Levels[level].Any(part => !part.Afresh.IsEmpty || !part.Bursts.IsEmpty));

    /// <summary>One draw of a block's levels: log of its weight, and the law of its frames; without chance the tops themselves.</summary>
    private (double Log, CountLaw Law) Draw(
        VaryingPoint point,
        VaryingIntegral integral,
        LevelBlock block,
        BlockTop top,
        RandomStream? chance
    )
    {
        var (z, log, law) = (new double[top.Z.Length], 0.0, CountLaw.Nothing);
        for (var i = 0; i < z.Length; i++)
            z[i] = Deviate(chance, ref log);
        if (z.Length > 0)
            Cholesky.Back(top.Factor, z);
        for (var i = 0; i < z.Length; i++)
        {
            z[i] += top.Z[i];
            log -= 0.5 * z[i] * z[i];
        }

        var own = point.Loadings[held.Finest];
        for (var l = 0; l < block.Finest.Length; l++)
        {
            var parts = held.Levels[block.Finest[l]];
            Span<double> above = new double[2 * parts.Length];
            var level = integral.Integral(block.Finest[l], z, above);
            var there = level.Top(top.Levels[l]);
            var (x0, x1) = (Deviate(chance, ref log), own.Dimension == 2 ? Deviate(chance, ref log) : 0);
            var (z0, z1) = there.At(x0, x1);
            log += level.LogDensity(z0, z1) + there.LogScale(own.Dimension);
            for (var p = 0; p < parts.Length; p++)
                law = law.Plus(Law(point, parts[p], above[2 * p] + own.Shift([z0, z1]), above[2 * p + 1] + own.Steepening([z0, z1])));
        }

        return (log, law);
    }

    private CountLaw Law(VaryingPoint point, LevelPart part, double shift, double steepening)
    {
        var curves = seen.Curves(point, steepening, new double[seen.Room]);
        var sum = CountLaw.Nothing;
        foreach (var burst in part.Bursts)
            sum = sum.Plus(curves.Count(burst.Cells, shift));
        foreach (var cell in part.Afresh)
        {
            var (keep, miss) = curves.Afresh(cell, shift);
            sum = sum.Plus(CountLaw.Binomial(cell.Frames, keep, miss));
        }

        return sum;
    }

    /// <summary>A standard normal deviate, whose log density is taken from the log of the weight.</summary>
    private static double Deviate(RandomStream? chance, ref double log)
    {
        var deviate = chance?.Normal() ?? 0;
        log += 0.5 * deviate * deviate;
        return deviate;
    }
}
