using MathNet.Numerics.Statistics;

namespace Handhold.Laws;

/// <summary>How often a group of plans is kept, against what they state.</summary>
/// <param name="Group">Which plans.</param>
/// <param name="Worlds">Worlds in which any was handed out.</param>
/// <param name="Plans">Plans handed out.</param>
/// <param name="Declined">Share of plans declined.</param>
/// <param name="Stated">Mean stated assurance.</param>
/// <param name="Kept">Mean chance of being kept.</param>
/// <param name="Error">Monte Carlo standard error of kept - stated, all plans of one world being one unit.</param>
/// <param name="PlugInKept">Mean chance with which the plug-in frames would do.</param>
/// <param name="Promised">Mean assurance asked for.</param>
/// <param name="Median">Median of the frames asked for.</param>
/// <param name="GeometricMean">Geometric mean of the frames asked for.</param>
internal sealed record Margin(
    string Group,
    int Worlds,
    int Plans,
    double Declined,
    double Stated,
    double Kept,
    double Error,
    double PlugInKept,
    double Promised,
    double Median,
    double GeometricMean
)
{
    /// <summary>Whether kept and stated agree within an allowance or four Monte Carlo errors.</summary>
    internal bool Holds(double allowance) => Math.Abs(Kept - Stated) <= Math.Max(allowance, 4 * Error);

    /// <summary>The margin of the plans of one group.</summary>
    /// <param name="group">Its name.</param>
    /// <param name="worlds">Outcomes, world by world.</param>
    /// <param name="belongs">Which plans belong to it. When it looks at the frames, declined plans belong to no group.</param>
    internal static Margin Of(string group, IEnumerable<IReadOnlyList<Outcome>> worlds, Func<Plan, bool> belongs) =>
        OfOutcomes(group, worlds, outcome => belongs(outcome.Plan));

    /// <summary>The margin of a group that is told by more than the plan.</summary>
    internal static Margin OfOutcomes(string group, IEnumerable<IReadOnlyList<Outcome>> worlds, Func<Outcome, bool> belongs)
    {
        var (all, stated, kept, promised, plugInPlans, plugInKept) = (0, 0.0, 0.0, 0.0, 0, 0.0);
        List<int> asked = [];
        List<(int Plans, double Difference)> units = [];
        foreach (var world in worlds)
        {
            var (plans, difference) = (0, 0.0);
            foreach (var outcome in world.Where(belongs))
            {
                all++;
                if (outcome.Plan.Frames is not { } frames)
                {
                    continue;
                }
                plans++;
                difference += outcome.Kept - outcome.Plan.Stated;
                stated += outcome.Plan.Stated;
                kept += outcome.Kept;
                promised += outcome.Plan.Assurance;
                asked.Add(frames);
                plugInPlans += outcome.PlugInKept is null ? 0 : 1;
                plugInKept += outcome.PlugInKept ?? 0;
            }
            units.Add((plans, difference));
        }
        var made = asked.Count;
        var mean = (kept - stated) / made;
        var error = Math.Sqrt(units.Sum(u => Math.Pow(u.Difference - mean * u.Plans, 2))) / made;
        return new(
            group,
            units.Count(u => u.Plans > 0),
            made,
            1 - (double)made / all,
            stated / made,
            kept / made,
            error,
            plugInKept / plugInPlans,
            promised / made,
            asked.Select(n => (double)n).Median(),
            asked.Select(n => (double)n).GeometricMean()
        );
    }
}
