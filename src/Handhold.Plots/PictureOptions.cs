namespace Handhold.Plots;

/// <summary>How a picture is drawn.</summary>
public sealed record PictureOptions
{
    /// <summary>The options used when none are given.</summary>
    public static PictureOptions Default { get; } = new();

    /// <summary>How the curve's questions are answered: day, marks of the camera, bursts, budget, and whether to go beyond the speeds tested.</summary>
    public AnswerOptions Answers { get; init; } = AnswerOptions.Default;

    /// <summary>Title; null: the finding in words.</summary>
    public string? Title { get; init; }

    /// <summary>Dark on light, or light on dark.</summary>
    public PictureTheme Theme { get; init; }
}
