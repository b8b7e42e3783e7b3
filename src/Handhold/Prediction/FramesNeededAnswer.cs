using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>How many frames bring the wanted keepers home.</summary>
public sealed class FramesNeededAnswer : Answer
{
    internal FramesNeededAnswer(
        Question question,
        ShutterSpeed at,
        int keepers,
        double wantedAssurance,
        int? frames,
        ImmutableArray<int> bursts,
        double assurance,
        RateEstimate? rate,
        LuckUsed luck,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(question, withinTested, frames is not null, statuses) =>
        (At, Keepers, WantedAssurance, Frames, Bursts, Assurance, Rate, Luck) = (
            at,
            keepers,
            wantedAssurance,
            frames,
            bursts,
            assurance,
            rate,
            luck
        );

    /// <summary>The speed asked.</summary>
    public ShutterSpeed At { get; }

    /// <summary>Keepers wanted.</summary>
    public int Keepers { get; }

    /// <summary>Assurance wanted.</summary>
    public double WantedAssurance { get; }

    /// <summary>Whether some number of frames within the budget will do.</summary>
    public bool Reachable => Frames is not null;

    /// <summary>Smallest number of frames; null when not reachable or declined.</summary>
    public int? Frames { get; }

    /// <summary>Frames in each burst, the last possibly short; empty when not reachable.</summary>
    public ImmutableArray<int> Bursts { get; }

    /// <summary>
    /// What equal bursts with a fresh grip each would do, for 2 to 6 of them, where they take no more frames, or than the budget when not reachable in one; empty unless
    /// asked for one burst whose frames share luck. Computed when first read.
    /// </summary>
    public ImmutableArray<ShootSplit> Splits => FindSplits?.Value ?? [];

    /// <summary>The split with the fewest frames to shoot and judge, of several the one with the fewest bursts; null where none saves a frame.</summary>
    public ShootSplit? BestSplit =>
        Splits.Where(s => Frames is null || s.Frames < Frames).OrderBy(s => s.Frames).ThenBy(s => s.Bursts).FirstOrDefault();

    /// <summary>Where neither one burst nor a split attains the assurance within the budget: the split of the budget that attains most. Computed when first read.</summary>
    public ShootSplit? BudgetSplit => BestSplit is null ? FindBudgetSplit?.Value : null;

    /// <summary>What bursts with a fresh grip each would do instead, in a sentence; null where there is nothing to say.</summary>
    public string? SplitSentence =>
        (Frames, BestSplit, BudgetSplit) switch
        {
            ({ } frames, { } split, _) =>
                $"{Fresh(split)} do what one burst of {frames} does, with {Say.Count(frames - split.Frames, "fewer frame")} to judge.",
            (null, { } split, _) => $"{Fresh(split)} do it, with {Say.Percent(split.Assurance)} assurance.",
            (null, _, { } split) when split.Assurance >= Assurance + 0.005 =>
                $"{Fresh(split)} come nearest within the budget, with {Say.Percent(split.Assurance)} assurance.",
            _ => null,
        };

    internal Lazy<ImmutableArray<ShootSplit>>? FindSplits { get; init; }

    internal Lazy<ShootSplit?>? FindBudgetSplit { get; init; }

    /// <summary>Probability of 0, 1, ... keepers of these frames; empty without a number of frames, or beyond 100. Computed when first read.</summary>
    public ImmutableArray<double> Probabilities => FindProbabilities?.Value ?? [];

    internal Lazy<ImmutableArray<double>>? FindProbabilities { get; init; }

    /// <summary>Where terms were said to stand.</summary>
    public Conditions Conditions { get; internal init; } = Conditions.None;

    /// <summary>Assurance attained with these frames, or with the whole budget when not reachable.</summary>
    public double Assurance { get; }

    /// <summary>The keeper rate at the speed; null when declined.</summary>
    public RateEstimate? Rate { get; }

    /// <summary>The burst luck assumed.</summary>
    public LuckUsed Luck { get; }

    /// <summary>Whether doubt on the parameters is in the number: <c>posterior</c>, or <c>none</c> where an estimated rate is taken as known.</summary>
    public string Doubt => Curve.Linear is null ? "posterior" : "none";

    /// <inheritdoc />
    public override string Sentence =>
        Frames is { } frames
            ? $"Shoot {Say.Frames(frames)} at {At}{Split()} for {Say.Keepers(Keepers)} with {Say.Percent(Assurance)} assurance{Condition()}."
            : Statuses.First(s => s.Code is StatusCode.OverBudget or StatusCode.OutsideTestedRange or StatusCode.Separated).Message;

    private static string Fresh(ShootSplit split) => $"{Say.Count(split.Bursts, "burst")} of {split.BurstsOf}, each with a fresh grip,";

    private string Condition() =>
        Curve.Linear is null ? ""
        : Luck.Value > 0 ? ", if the estimated rate and luck are the true ones"
        : ", if the estimated rate is the true one";

    private string Split() =>
        Bursts.Length <= 1 ? " in one burst"
        : Bursts[^1] == Bursts[0] ? $" in {Say.Count(Bursts.Length, "burst")} of {Bursts[0]}"
        : $" in {Say.Count(Bursts.Length - 1, "burst")} of {Bursts[0]} and one of {Bursts[^1]}";
}
