using System.Globalization;

namespace Handhold;

/// <summary>One frame that was shot, with what was decided about it.</summary>
public sealed record ShotFrame
{
    /// <summary>A frame, judged or not.</summary>
    /// <param name="exposure">The shutter speed.</param>
    /// <param name="verdict">What was decided; leave it out for a frame that is not judged, or only graded.</param>
    /// <exception cref="CellException">The exposure was never set, or the verdict is none of the three.</exception>
    public ShotFrame(ShutterSpeed exposure, Verdict verdict = Verdict.NotJudged)
    {
        if (exposure == default)
            throw new CellException("A frame", "its exposure was never set.", "Give it a speed, such as ShutterSpeed.OneOver(60).");
        if (!Enum.IsDefined(verdict))
            throw NoVerdict(exposure, verdict);
        (Exposure, Verdict) = (exposure, verdict);
    }

    /// <summary>The shutter speed.</summary>
    public ShutterSpeed Exposure { get; }

    /// <summary>What was decided.</summary>
    public Verdict Verdict { get; }

    /// <summary>What was decided at a second look, blind to the first; not judged where there was none.</summary>
    /// <exception cref="CellException">The verdict is none of the three.</exception>
    public Verdict SecondVerdict
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw NoVerdict(Exposure, value);
    }

    /// <summary>Ordered grade, from 0 (unusable) up; null when not graded.</summary>
    /// <exception cref="CellException">The grade is negative.</exception>
    public int? Grade
    {
        get;
        init =>
            field = value is null or >= 0
                ? value
                : throw new CellException(
                    Place(Exposure),
                    string.Create(CultureInfo.InvariantCulture, $"grade {value} is below 0, the grade of an unusable frame."),
                    "Grade from 0 up, and leave out the grade of a frame that is not graded."
                );
    }

    /// <summary>Under what conditions.</summary>
    public Conditions Conditions { get; init; } = Conditions.None;

    /// <summary>The verdict, from the grade where one was given with a threshold.</summary>
    /// <param name="keeperFromGrade">The lowest grade of a keeper, or null.</param>
    /// <param name="number">Which frame this is, for the error.</param>
    internal Verdict VerdictAt(int? keeperFromGrade, int number)
    {
        if (Grade is not { } grade || (keeperFromGrade is null && Verdict != Verdict.NotJudged))
            return Verdict;
        if (keeperFromGrade is not { } threshold)
            throw Refused(
                $"grade {grade} alone does not say whether the frame is a keeper.",
                "Say from which grade up a frame is a keeper."
            );

        var graded = grade >= threshold ? Verdict.Keeper : Verdict.Reject;
        return Verdict == Verdict.NotJudged || Verdict == graded
            ? graded
            : throw Refused(
                $"the verdict is {Verdict}, but grade {grade} makes it a {graded} where grades from {threshold} up are keepers.",
                "Correct one of the two, or leave one out."
            );

        CellException Refused(FormattableString problem, string remedy) =>
            new(FormattableString.Invariant($"Frame {number} at {Exposure}"), FormattableString.Invariant(problem), remedy);
    }

    private static CellException NoVerdict(ShutterSpeed exposure, Verdict verdict) =>
        new(Place(exposure), $"{verdict:d} is no verdict.", "Say Keeper, Reject or NotJudged.");

    private static string Place(ShutterSpeed exposure) => $"The frame at {exposure}";
}
