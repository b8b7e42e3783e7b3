using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>How many frames bring the wanted keepers home.</summary>
public sealed class FramesNeededAnswer : Answer
{
    internal FramesNeededAnswer(
        KeeperCurve curve,
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
        : base(curve, withinTested, frames is not null, statuses) =>
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

    /// <summary>What equal bursts with a fresh grip each would do, for 2 to 6 of them, where they take no more frames; empty unless asked for one burst whose frames share luck. Computed when first read.</summary>
    public ImmutableArray<ShootSplit> Splits => FindSplits?.Value ?? [];

    /// <summary>The split that takes the fewest frames, of several the one with the fewest bursts; null where none saves a frame.</summary>
    public ShootSplit? BestSplit => Splits.Where(s => s.Frames < Frames).OrderBy(s => s.Frames).ThenBy(s => s.Bursts).FirstOrDefault();

    internal Lazy<ImmutableArray<ShootSplit>>? FindSplits { get; init; }

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

    private string Condition() =>
        Curve.Linear is null ? ""
        : Luck.Value > 0 ? ", if the estimated rate and luck are the true ones"
        : ", if the estimated rate is the true one";

    private string Split() =>
        Bursts.Length <= 1 ? " in one burst"
        : Bursts[^1] == Bursts[0] ? $" in {Say.Count(Bursts.Length, "burst")} of {Bursts[0]}"
        : $" in {Say.Count(Bursts.Length - 1, "burst")} of {Bursts[0]} and one of {Bursts[^1]}";
}
