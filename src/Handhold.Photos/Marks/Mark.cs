namespace Handhold.Photos;

/// <summary>How a photograph was judged: a rating of -1 (rejected), 0 (unrated) or up to 5, and a label; null where nothing is said.</summary>
internal readonly record struct Mark(double? Rating, string? Label)
{
    /// <summary>What is said here, and what is not said here from <paramref name="other"/>.</summary>
    public Mark Or(Mark other) => new(Rating ?? other.Rating, Label ?? other.Label);

    /// <summary>Whether the two say different things; an absent rating means 0 (ISO 16684-1), an absent label none.</summary>
    public bool Contradicts(Mark other) =>
        (Rating is { } rating && other.Rating is { } otherRating && rating != otherRating)
        || (Label is { } label && other.Label is { } otherLabel && label != otherLabel);

    /// <summary>The verdict by the mapping that was given; null where rating and label say opposite things.</summary>
    public Verdict? VerdictBy(PhotoOptions options)
    {
        var byRating =
            options.KeeperFromRating is not { } threshold || Rating is null or 0 ? Verdict.NotJudged
            : Rating >= threshold ? Verdict.Keeper
            : Verdict.Reject;
        var byLabel =
            Label is null ? Verdict.NotJudged
            : Label == options.KeeperFromLabel ? Verdict.Keeper
            : Label == options.RejectFromLabel ? Verdict.Reject
            : Verdict.NotJudged;
        return Joined(byRating, byLabel);
    }

    /// <summary>What two verdicts on one frame come to; null where they are opposite.</summary>
    public static Verdict? Joined(Verdict one, Verdict other) =>
        one == other || other == Verdict.NotJudged ? one
        : one == Verdict.NotJudged ? other
        : null;
}
