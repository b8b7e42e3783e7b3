namespace Handhold;

/// <summary>What is believed, before the data, of how levels that vary spread about what they have in common.</summary>
/// <remarks>
/// Standard deviations between levels: of the half point in stops, of the natural logarithm of the steepness. Judgement, like all priors: two photographers in three lie within a stop of the
/// typical one, two setups of one photographer within half a stop.
/// </remarks>
public sealed record SpreadPriors
{
    /// <summary>Half points of photographers, stops.</summary>
    public HalfNormalPrior PhotographerTau { get; init; } = new(1);

    /// <summary>Logarithms of the steepness of photographers.</summary>
    public HalfNormalPrior PhotographerLogB { get; init; } = new(0.25);

    /// <summary>Half points of the setups of one photographer, stops.</summary>
    public HalfNormalPrior SetupTau { get; init; } = new(0.5);

    /// <summary>Logarithms of the steepness of the setups of one photographer.</summary>
    public HalfNormalPrior SetupLogB { get; init; } = new(0.15);

    /// <summary>Half points of the levels of any other column, stops; those of sessions and bursts have the priors of their luck.</summary>
    public HalfNormalPrior OtherTau { get; init; } = new(0.5);

    /// <summary>Logarithms of the steepness of the levels of any other column.</summary>
    public HalfNormalPrior OtherLogB { get; init; } = new(0.15);

    /// <summary>Effects of a term that varies, by the levels of any column, in prior standard deviations of the term's own effect: half of what is believed of it.</summary>
    public HalfNormalPrior Term { get; init; } = new(0.5);

    /// <summary>Correlation of a level's half point and logarithm of the steepness.</summary>
    public LkjPrior Correlation { get; init; } = new(2);

    /// <summary>All spreads as many times as wide.</summary>
    internal SpreadPriors Widened(double by) =>
        this with
        {
            PhotographerTau = new(by * PhotographerTau.Scale),
            PhotographerLogB = new(by * PhotographerLogB.Scale),
            SetupTau = new(by * SetupTau.Scale),
            SetupLogB = new(by * SetupLogB.Scale),
            OtherTau = new(by * OtherTau.Scale),
            OtherLogB = new(by * OtherLogB.Scale),
            Term = new(by * Term.Scale),
        };

    /// <summary>The prior of a column's half points.</summary>
    internal HalfNormalPrior Tau(string column, Priors others) =>
        column switch
        {
            "photographer" => PhotographerTau,
            "setup" => SetupTau,
            "session" => others.SessionLuck,
            "burst" => others.BurstLuck,
            _ => OtherTau,
        };

    /// <summary>The prior of a column's logarithms of the steepness.</summary>
    internal HalfNormalPrior LogB(string column) =>
        column switch
        {
            "photographer" => PhotographerLogB,
            "setup" => SetupLogB,
            _ => OtherLogB,
        };
}
