namespace Handhold;

/// <summary>What became of frames that were judged a second time, blind to the first verdict.</summary>
/// <param name="KeptTwice">Called keepers both times.</param>
/// <param name="KeptOnce">Called a keeper one time and a reject the other.</param>
/// <param name="KeptNever">Called rejects both times.</param>
public readonly record struct SecondLooks(int KeptTwice, int KeptOnce, int KeptNever)
{
    /// <summary>Frames judged twice.</summary>
    public int Frames => KeptTwice + KeptOnce + KeptNever;

    /// <summary>The looks at the frames of both.</summary>
    public static SecondLooks operator +(SecondLooks one, SecondLooks other) =>
        new(one.KeptTwice + other.KeptTwice, one.KeptOnce + other.KeptOnce, one.KeptNever + other.KeptNever);

    /// <summary>The same as the operator.</summary>
    /// <param name="one">Looks at some frames.</param>
    /// <param name="other">Looks at other frames.</param>
    public static SecondLooks Add(SecondLooks one, SecondLooks other) => one + other;

    /// <summary>One frame's looks; none where it was not judged again.</summary>
    internal static SecondLooks Of(Verdict first, Verdict second) =>
        (first, second) switch
        {
            (_, Verdict.NotJudged) => default,
            (Verdict.Keeper, Verdict.Keeper) => new(1, 0, 0),
            (Verdict.Reject, Verdict.Reject) => new(0, 0, 1),
            _ => new(0, 1, 0),
        };
}
