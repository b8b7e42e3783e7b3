namespace Handhold.Plots;

/// <summary>What a field card says.</summary>
public sealed record FieldCardOptions
{
    /// <summary>The options used when none are given.</summary>
    public static FieldCardOptions Default { get; } = new();

    /// <summary>The keeper rate to trust a speed for, above 0 and below 1.</summary>
    public double Rate { get; init; } = 0.8;

    /// <summary>How sure to be of that rate, above 0 and below 1.</summary>
    public double Assurance { get; init; } = 0.9;

    /// <summary>How the curve's questions are answered. <see cref="AnswerOptions.Budget"/> is the most frames that anybody shoots for one keeper; beyond it the card says to use a support.</summary>
    public AnswerOptions Answers { get; init; } = AnswerOptions.Default with { Budget = 30 };

    /// <summary>When the frames were shot, in the owner's words; null: the sessions' labels where they are dates such as 2026-11-20, else not recorded.</summary>
    public string? Date { get; init; }
}
