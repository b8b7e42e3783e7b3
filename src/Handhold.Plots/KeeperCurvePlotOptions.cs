namespace Handhold.Plots;

/// <summary>What a keeper-curve plot shows.</summary>
public sealed record KeeperCurvePlotOptions
{
    /// <summary>The options used when none are given.</summary>
    public static KeeperCurvePlotOptions Default { get; } = new();

    /// <summary>The keeper rate whose exposure is marked, above 0 and below 1; half the frames unless said otherwise.</summary>
    public double TargetRate { get; init; } = 0.5;

    /// <summary>How the curve's questions are answered: day, marks of the camera, and whether to go beyond the speeds tested.</summary>
    public AnswerOptions Answers { get; init; } = AnswerOptions.Default;

    /// <summary>Title; null: the finding in words, such as "Half the frames are keepers at 1/13 s".</summary>
    public string? Title { get; init; }

    /// <summary>Draw the ceiling as a thin line, where it was estimated.</summary>
    public bool ShowCeiling { get; init; }

    /// <summary>Dark on light, or light on dark.</summary>
    public PictureTheme Theme { get; init; }
}
