namespace Handhold;

/// <summary>How often verdicts are right.</summary>
/// <remarks>
/// A frame is called a keeper with probability 1 - specificity + (sensitivity + specificity - 1) P, P the probability that it is one. Answers are about
/// frames that are keepers, not about those called so. Source: Magder and Hughes (1997), American Journal of Epidemiology 146, 195-203.
/// </remarks>
public sealed record Judging
{
    /// <summary>Every verdict is right.</summary>
    public static Judging Perfect { get; } = new();

    /// <summary>Share of keepers that are called keepers, above 0 and at most 1.</summary>
    public double Sensitivity { get; init; } = 1;

    /// <summary>Share of rejects that are called rejects, above 0 and at most 1; together with the sensitivity above 1.</summary>
    public double Specificity { get; init; } = 1;

    /// <summary>Frames judged twice that both were learned from; 0 where they were given.</summary>
    public int FramesJudgedTwice { get; init; }

    /// <summary>How often frames are called keepers that are so with a probability.</summary>
    internal double Called(double rate) => 1 - Specificity + (Sensitivity + Specificity - 1) * rate;
}
