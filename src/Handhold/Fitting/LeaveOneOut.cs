using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>What the other speeds lead to expect of the keepers at each speed.</summary>
/// <remarks>
/// The posterior without a speed is sampled around its top; at every point the count at that speed has an exact law, the luck of its recorded bursts and days
/// included. A count that the fit has seen would judge itself.
/// </remarks>
internal static class LeaveOneOut
{
    private const int Points = 256;

    internal static ImmutableArray<ExpectedCount> Of(KeeperModel model, CurveRows rows)
    {
        var data = rows.Data;
        if (data.Speeds.Length == 1)
            return [];
        var moved = rows.Moved(model);
        var frames = TermObservations.From(moved, data.Cells, model.Luck);
        TermDensity density = new(model, moved, frames);
        var start = Peak.Of(density.Log, TermSample.Start(density)).Top;
        StudentPoints points = new(density.Dimension, StudentPoints.Usual, Points, Seed.From(model.Seed).Stream(1).Bits);
        return [.. data.Speeds.Select(Expected)];

        ExpectedCount Expected(SpeedCount speed)
        {
            var at = speed.Exposure.Log2Seconds;
            var others = density.Of(frames.Where(c => c.Exposure != at));
            var held = frames.Where(c => c.Exposure == at);
            var sample = WeightedSample.Near(others.Log, start, points);
            var (fewer, exactly, more, mean) = (0.0, 0.0, 0.0, 0.0);
            for (var k = 0; k < sample.Count; k++)
            {
                var (weight, count) = (sample.Weights[k], density.Count(sample.Point(k), held));
                var (below, same, above) = count.Around(speed.Keepers);
                fewer += weight * below;
                exactly += weight * same;
                more += weight * above;
                mean += weight * count.Mean;
            }

            return new(speed, mean / speed.Frames, fewer, exactly, more);
        }
    }
}
