using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold;

/// <summary>How many of some plans were kept, beside what was promised.</summary>
public sealed class KeptShare
{
    internal KeptShare(ImmutableArray<ShotPlan> decided, double level)
    {
        (Decided, Kept) = (decided.Length, decided.Count(s => s.Outcome == PlanOutcome.Kept));
        Days = decided.Select(s => (s.Photographer, s.Session)).Distinct().Count();
        Promised = decided.Average(s => s.Plan.Assurance);
        Interval = BinomialInterval.Wilson(Kept, Decided, worth: Days, level);
        if (Days == Decided)
            ChanceOfAsFew = Math.Min(
                1,
                decided.Aggregate<ShotPlan, double[]>([1], (law, s) => With(law, s.Plan.Assurance))[..(Kept + 1)].Sum()
            );
    }

    /// <summary>Shoots that kept or broke their plan, at least 1.</summary>
    public int Decided { get; }

    /// <summary>Shoots that kept it.</summary>
    public int Kept { get; }

    /// <summary>Days of these shoots; those of one day share its luck.</summary>
    public int Days { get; }

    /// <summary>Share kept.</summary>
    public double Share => (double)Kept / Decided;

    /// <summary>Wilson's interval of the share; where several shoots share a day it counts days, as if the day decided all of them.</summary>
    public ConfidenceInterval Interval { get; }

    /// <summary>Mean chance that was promised.</summary>
    public double Promised { get; }

    /// <summary>The chance that as few or fewer are kept when every promise is true; null where shoots share a day.</summary>
    public double? ChanceOfAsFew { get; }

    private static double[] With(double[] law, double chance)
    {
        var sum = new double[law.Length + 1];
        IndependentCounts.Add(law, [1 - chance, chance], sum);
        return sum;
    }
}
