using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>What other priors of steepness, luck and spreads do to the weight of a point.</summary>
internal static class PriorChange
{
    /// <summary>Log of the density of a point under priors <paramref name="by"/> times as wide, against that under the priors.</summary>
    internal static double Log(Priors priors, ImmutableArray<LevelSpread> spreads, VaryingDraw draw, double by)
    {
        var point = draw.Typical;
        var log = Change((point.LogSteepness - Math.Log(priors.Steepness.Median)) / priors.Steepness.LogStandardDeviation, by);
        if (point.SessionSd > 0)
            log += Change(point.SessionSd / priors.SessionLuck.Scale, by);
        if (point.BurstSd > 0)
            log += Change(point.BurstSd / priors.BurstLuck.Scale, by);
        for (var g = 0; g < spreads.Length; g++)
        {
            if (spreads[g].Tau is { } tau)
                log += Change(draw.Loadings[g].Tau / tau.Scale, by);
            if (spreads[g].LogB is { } logB)
                log += Change(draw.Loadings[g].LogB / logB.Scale, by);
        }

        return log;
    }

    /// <summary>Of a normal or half-normal number in units of its scale.</summary>
    private static double Change(double deviate, double by) => -Math.Log(by) - 0.5 * deviate * deviate * (1 / (by * by) - 1);
}
