namespace Handhold.Photos;

/// <summary>How photographs become frames. Without a mapping from ratings or labels no frame is judged.</summary>
public sealed record PhotoOptions
{
    /// <summary>The options used when none are given.</summary>
    public static PhotoOptions Default { get; } = new();

    /// <summary>
    /// The lowest rating of a keeper, 1 to 5. With it lower ratings and -1 are rejects; 0 and no rating mean unrated (ISO 16684-1), and the frame is
    /// not judged.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not 1 to 5.</exception>
    public int? KeeperFromRating
    {
        get;
        init =>
            field = value is null or (>= 1 and <= 5)
                ? value
                : throw new ArgumentOutOfRangeException(nameof(KeeperFromRating), value, "A keeper's lowest rating is 1 to 5.");
    }

    /// <summary>The label of keepers, compared letter by letter. Labels without a mapping judge nothing.</summary>
    public string? KeeperFromLabel { get; init; }

    /// <summary>The label of rejects, compared letter by letter.</summary>
    public string? RejectFromLabel { get; init; }

    /// <summary>Whose rating or label counts where photograph and sidecar differ.</summary>
    public MetadataPrecedence Precedence { get; init; } = MetadataPrecedence.Sidecar;

    /// <summary>The longest pause between two frames of one burst, from the end of the one exposure to the start of the next. Default one second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public TimeSpan BurstGap
    {
        get;
        init => field = NotNegative(value, nameof(BurstGap));
    } = TimeSpan.FromSeconds(1);

    /// <summary>The longest pause between two frames of one session; null, the default, makes every day of the camera's clock a session.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public TimeSpan? SessionGap
    {
        get;
        init => field = value is { } gap ? NotNegative(gap, nameof(SessionGap)) : null;
    }

    /// <summary>
    /// What serial numbers are mixed with before they are hashed into the label of a setup. With a text of your own nobody can find a serial number
    /// by trying them all; labels agree between imports as long as it is the same.
    /// </summary>
    public string SerialSalt { get; init; } = "";

    /// <summary>Files read at the same time; null, the default, as many as there are processors. What comes out does not depend on it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is below 1.</exception>
    public int? Threads
    {
        get;
        init =>
            field = value is null or >= 1
                ? value
                : throw new ArgumentOutOfRangeException(nameof(Threads), value, "At least one file is read at a time.");
    }

    private static TimeSpan NotNegative(TimeSpan gap, string name) =>
        gap >= TimeSpan.Zero ? gap : throw new ArgumentOutOfRangeException(name, gap, "A pause is not negative.");
}
