using System.Collections.Immutable;
using Handhold.Randomness;

namespace Handhold;

/// <summary>What came home of a plan on one day.</summary>
public sealed class ShotPlan
{
    private ShotPlan(
        PlannedShoot plan,
        string? photographer,
        string? session,
        int frames,
        int keepers,
        int unjudged,
        PlanOutcome outcome
    ) =>
        (Plan, Photographer, Session, Frames, Keepers, Unjudged, Outcome) = (
            plan,
            photographer,
            session,
            frames,
            keepers,
            unjudged,
            outcome
        );

    /// <summary>The plan.</summary>
    public PlannedShoot Plan { get; }

    /// <summary>Who shot it; null when not recorded.</summary>
    public string? Photographer { get; }

    /// <summary>The day; null when not recorded.</summary>
    public string? Session { get; }

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>Keepers among them.</summary>
    public int Keepers { get; }

    /// <summary>Frames not judged.</summary>
    public int Unjudged { get; }

    /// <summary>What became of the plan.</summary>
    public PlanOutcome Outcome { get; }

    /// <summary>Where the count of keepers lies in what was predicted, 0 to 1; null unless the plan was shot to the frame and its prediction written down.</summary>
    /// <remarks>
    /// P(fewer) + V P(as many), V uniform from the seed: uniform when predictions are right. Source: Czado, Gneiting and Held (2009), Biometrics 65, 1254-1261.
    /// </remarks>
    public double? Place { get; private init; }

    /// <summary>The frames of a plan on one day.</summary>
    internal static ShotPlan Of(PlannedShoot plan, ImmutableArray<FrameCell> rows, RandomStream chance)
    {
        var (frames, keepers, unjudged) = (rows.Sum(r => r.Frames), rows.Sum(r => r.Keepers), rows.Sum(r => r.Unjudged));
        var surplus = frames + unjudged - plan.Frames;
        var outcome =
            surplus == 0 && Differ(plan.Bursts, rows) ? PlanOutcome.OtherBursts
            : keepers - Math.Max(0, surplus) >= plan.Keepers ? PlanOutcome.Kept
            : keepers + unjudged + Math.Max(0, -surplus) < plan.Keepers ? PlanOutcome.Broken
            : PlanOutcome.Undecided;
        var (photographer, session) = (rows[0].Conditions.Photographer, rows[0].Conditions.Session);
        var predicted = frames == plan.Frames && unjudged == 0 && outcome != PlanOutcome.OtherBursts && !plan.Probabilities.IsEmpty;
        var share = chance.Uniform();
        return new(plan, photographer, session, frames, keepers, unjudged, outcome)
        {
            Place = predicted ? plan.Probabilities[..keepers].Sum() + share * plan.Probabilities[keepers] : null,
        };
    }

    /// <summary>Whether bursts were recorded, and are not those planned.</summary>
    private static bool Differ(ImmutableArray<int> planned, ImmutableArray<FrameCell> rows) =>
        rows.All(r => r.Conditions.Burst is not null)
        && !rows.GroupBy(r => (r.Conditions.Setup, r.Conditions.Burst))
            .Select(g => g.Sum(r => r.Frames + r.Unjudged))
            .Order()
            .SequenceEqual(planned.Order());
}
