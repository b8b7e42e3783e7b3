namespace Handhold;

/// <summary>How questions are answered.</summary>
public sealed record AnswerOptions
{
    /// <summary>The options used when none are given.</summary>
    public static AnswerOptions Default { get; } = new();

    /// <summary>How a report on a curve asks it: at its <see cref="KeeperCurve.ReferenceConditions"/>, wherever the answer lies, and for a typical level where levels vary.</summary>
    /// <param name="curve">The curve.</param>
    public static AnswerOptions OfReport(KeeperCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return Default with
        {
            BeyondTested = true,
            Conditions = curve.ReferenceConditions,
            Whose = curve.Linear is { Nodes: not null } || curve.Varying is not null ? Handhold.Whose.Typical : null,
        };
    }

    /// <summary>For which day; another day unless said otherwise. Where several days were tested, the session of <see cref="Conditions"/> says which is meant.</summary>
    public Day Day { get; init; } = Day.Another;

    /// <summary>Under what conditions, for a curve with terms; what its frames agree in need not be said again.</summary>
    public Conditions Conditions { get; init; } = Conditions.None;

    /// <summary>Whose rate is meant; must be said where levels vary, and is the curve's own otherwise. The conditions name the levels.</summary>
    public Whose? Whose { get; init; }

    /// <summary>How intervals of exposures are made, for curves without a posterior.</summary>
    public IntervalMethod Intervals { get; init; } = IntervalMethod.Profile;

    /// <summary>Answer also more than one stop beyond the speeds tested.</summary>
    public bool BeyondTested { get; init; }

    /// <summary>The marks that the camera offers.</summary>
    public Marks Marks { get; init; } = Marks.Third;

    /// <summary>Frames a burst, each burst with a fresh grip; null: all frames in one burst.</summary>
    public int? BurstsOf { get; init; }

    /// <summary>The largest number of frames considered.</summary>
    public int Budget { get; init; } = 1000;

    /// <summary>Also ask the curve under priors of steepness and luck twice and half as wide, and say when that decides the answer. Costs two more fits, once a curve.</summary>
    public bool CheckPriors { get; init; } = true;

    /// <summary>Where frames were not judged, also answer as if they were all rejects, and say when that changes the decision. Costs one more fit of all curves.</summary>
    public bool CheckMissing { get; init; } = true;
}
