using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <content>What the curves give to frames, without derivatives.</content>
internal sealed partial class LevelCurves
{
    /// <summary>Log-likelihood of the frames of a part, as <see cref="Add"/> has it.</summary>
    internal Vector512<double> Log(LevelPart part, Vector512<double> shift, Vector512<double> steepening)
    {
        Place place = new(this, shift, Vector512.Exp(steepening), stackalloc Vector512<double>[_burst.Nodes.Length]);
        var sum = Vector512<double>.Zero;
        foreach (var cell in part.Afresh)
            sum += LogAfresh(cell, ref place);
        foreach (var burst in part.Bursts)
            sum += LogOfBurst(burst.Cells, ref place);
        return sum;
    }

    private Vector512<double> LogAfresh(TermCell cell, ref Place place)
    {
        place.Go(cell);
        var (keep, miss) = (Vector512<double>.Zero, Vector512<double>.Zero);
        for (var k = 0; k < _burst.Nodes.Length; k++)
        {
            var (mu, oneMinusMu, _) = place.At(k);
            keep += mu * _burst.Weights[k];
            miss += oneMinusMu * _burst.Weights[k];
        }

        var log = Vector512<double>.Zero;
        if (cell.Keepers > 0)
            log += Vector512.Log(Kept(keep)) * cell.Keepers;
        if (cell.Frames > cell.Keepers)
            log += Vector512.Log(Missed(miss)) * (cell.Frames - cell.Keepers);
        return log;
    }

    private Vector512<double> LogOfBurst(ImmutableArray<TermCell> cells, ref Place place)
    {
        Span<Vector512<double>> chances = stackalloc Vector512<double>[_burst.Nodes.Length];
        for (var k = 0; k < chances.Length; k++)
            chances[k] = Vector512.Create(_burst.Weights[k]);
        foreach (var cell in cells)
        {
            place.Go(cell);
            for (var k = 0; k < chances.Length; k++)
            {
                var (mu, oneMinusMu, _) = place.At(k);
                chances[k] *= Elementary.Power(Kept(mu), cell.Keepers) * Elementary.Power(Missed(oneMinusMu), cell.Frames - cell.Keepers);
            }
        }

        var (top, total) = (Vector512<double>.Zero, Total(chances));
        if (Vector512.LessThanAny(total, Vector512.Create(TermCurves.Vanishing)))
            (top, total) = (Enlarge(cells, ref place, chances), Total(chances));
        return top + Vector512.Log(total);
    }
}
