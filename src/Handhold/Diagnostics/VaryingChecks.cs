using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Diagnostics;

/// <summary>Mean rates of the levels of a curve, speed by speed, as their posterior has them; no cell is left out, since the levels' effects are.</summary>
internal static class VaryingChecks
{
    internal static (double?[] Fitted, ImmutableArray<CellCheck> Cells) Of(KeeperCurve curve, VaryingPosterior varying)
    {
        var kept = curve.Data.Speeds.ToDictionary(s => s.Exposure, _ => 0.0);
        foreach (var level in curve.Data.Cells.GroupBy(c => string.Join(',', varying.LevelsOf(c.Conditions))))
        {
            var posterior = varying.With(varying.LevelsOf(level.First().Conditions), []);
            foreach (var alike in level.GroupBy(c => varying.Moved.Read(c.Conditions)))
            {
                var law = posterior.At(alike.First().Conditions).AnotherDay;
                foreach (var speed in alike.GroupBy(c => c.Exposure))
                    kept[speed.Key] += speed.Sum(c => c.Frames) * law.MeanRate(speed.Key.Log2Seconds);
            }
        }

        return ([.. curve.Data.Speeds.Select(s => (double?)(kept[s.Exposure] / s.Frames))], []);
    }
}
