using System.Collections.Immutable;
using Handhold.Prediction;
using Handhold.Randomness;

namespace Handhold;

/// <summary>What came home against what was promised.</summary>
public sealed class KeptReport
{
    private KeptReport(ImmutableArray<PlannedShoot> plans, ImmutableArray<ShotPlan> shoots, double level)
    {
        (Plans, Shoots, Level) = (plans, shoots, level);
        ShotPlan[] decided = [.. shoots.Where(s => s.Outcome is PlanOutcome.Kept or PlanOutcome.Broken)];
        Overall = decided.Length == 0 ? null : new(decided.ToImmutableArray(), level);
        ByAssurance =
        [
            .. decided
                .GroupBy(s => s.Plan.WantedAssurance)
                .OrderBy(g => g.Key)
                .Select(g => KeyValuePair.Create(g.Key, new KeptShare([.. g], level))),
        ];
    }

    /// <summary>Holds plans against a table of what was shot: the frames of a plan's curve, conditions and speed are its shoots, one on every day that has some.</summary>
    /// <param name="plans">The plans.</param>
    /// <param name="table">The frames. A column <c>plan</c> holds the number of the plan that a row belongs to, where several would fit.</param>
    /// <param name="seed">Seed of the chance in <see cref="ShotPlan.Place"/>.</param>
    /// <param name="level">Confidence of intervals, above 0 and below 1.</param>
    public static KeptReport Of(IEnumerable<PlannedShoot> plans, FrameTable table, int seed = 1, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        ImmutableArray<PlannedShoot> all = [.. plans];
        var shoots =
            from plan in all
            from day in table.Where(plan.Covers).GroupBy(row => (row.Conditions.Photographer, row.Conditions.Session))
            select (Plan: plan, Rows: day.ToImmutableArray());
        return new(
            all,
            [.. shoots.Select((shoot, i) => ShotPlan.Of(shoot.Plan, shoot.Rows, Seed.From(seed).Stream(i)))],
            Check.Share(level, "The level of an interval")
        );
    }

    /// <summary>All plans.</summary>
    public ImmutableArray<PlannedShoot> Plans { get; }

    /// <summary>Every plan on every day that has frames of it, in the order of plans, then of the table.</summary>
    public ImmutableArray<ShotPlan> Shoots { get; }

    /// <summary>Plans of which the table has no frame.</summary>
    public ImmutableArray<PlannedShoot> NotShot => [.. Plans.Except(Shoots.Select(s => s.Plan))];

    /// <summary>All shoots that were decided; null when none was.</summary>
    public KeptShare? Overall { get; }

    /// <summary>The same by the assurance that was asked for, rising.</summary>
    public ImmutableArray<KeyValuePair<double, KeptShare>> ByAssurance { get; }

    /// <summary>Mean of <see cref="ShotPlan.Place"/>; near a half when predictions are right. Null when there is none.</summary>
    public double? MeanPlace => Shoots.Average(s => s.Place);

    /// <summary>Confidence of intervals.</summary>
    public double Level { get; }

    /// <summary>The report as a person would say it.</summary>
    public string Sentence =>
        Overall is { Interval: var interval } all
            ? $"{Say.Count(all.Kept, "plan")} of {all.Decided} {(all.Kept == 1 ? "was" : "were")} kept: {Say.Percent(all.Share)} ({Say.Percent(Level)} interval {Say.Percent(interval.Lower)} to {Say.Percent(interval.Upper)}{ByDays(all)}), where {Say.Percent(all.Promised)} was promised."
            : "No plan was shot so that one could say whether it was kept.";

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;

    private static string ByDays(KeptShare all) =>
        all.Days < all.Decided ? $", counting {Say.Count(all.Days, "day")}, since shoots of one day share its luck" : "";
}
