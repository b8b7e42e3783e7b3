using System.Collections.Immutable;

namespace Handhold.Cli;

/// <summary>What came home against what was promised, for people.</summary>
internal static class KeptPage
{
    public static void Write(Page page, KeptReport report, ImmutableArray<FramesNeededAnswer> again)
    {
        page.Text(report.Sentence);
        if (report.Overall is { ChanceOfAsFew: { } chance } all && all.Kept < all.Decided)
            page.Text($"Were every promise true, as few or fewer would be kept {Plain.Percent(chance)} of the time.");
        var places = report.Shoots.Count(s => s.Place is not null);
        if (report.MeanPlace is { } place && places > 1)
            page.Text(
                $"On average the count of keepers lies at {Plain.Percent(place)} of what was predicted, least to most; right predictions lie at 50 %, give or take {Plain.Percent(1.96 / Math.Sqrt(12 * places))}."
            );
        page.Blank();
        if (!report.Shoots.IsEmpty)
        {
            page.Table(["Plan", "Speed", "Wanted", "Promised", "Day", "Came home", "Kept"], report.Shoots.Select(Row));
            page.Blank();
        }

        if (!report.NotShot.IsEmpty)
            page.Text($"Not in the table: {string.Join("; ", report.NotShot.Select(p => $"plan {p.Number} ({Name(p)}{p.At})"))}.");
        foreach (var answer in again)
            page.Text($"With the new frames: {answer.Sentence}");
        page.Text("A plan counts as kept or broken only when the frames not shot, not judged or too many could not change it.");
    }

    private static string[] Row(ShotPlan shoot) =>
        [
            FormattableString.Invariant($"{shoot.Plan.Number}") + (shoot.Plan.Key.Values.IsEmpty ? "" : $" · {shoot.Plan.Key}"),
            shoot.Plan.At.ToString(),
            FormattableString.Invariant($"{shoot.Plan.Keepers} of {shoot.Plan.Frames}"),
            Plain.Percent(shoot.Plan.Assurance),
            shoot.Session ?? "not recorded",
            FormattableString.Invariant($"{shoot.Keepers} of {shoot.Frames}")
                + (shoot.Unjudged == 0 ? "" : FormattableString.Invariant($", {shoot.Unjudged} not judged")),
            shoot.Outcome switch
            {
                PlanOutcome.Kept => "yes",
                PlanOutcome.Broken => "no",
                PlanOutcome.OtherBursts => "shot in other bursts",
                _ => "open",
            },
        ];

    private static string Name(PlannedShoot plan) => plan.Key.Values.IsEmpty ? "" : $"{plan.Key} at ";
}
