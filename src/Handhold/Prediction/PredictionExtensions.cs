using Handhold.Prediction;

namespace Handhold;

/// <summary>The questions that a keeper curve answers.</summary>
/// <remarks>All for another day unless the options say the same: the luck of day and burst and the doubt on every parameter are in each number.</remarks>
public static class PredictionExtensions
{
    /// <summary>Keeper rate at a speed.</summary>
    public static RateAnswer RateAt(this KeeperCurve curve, ShutterSpeed at, AnswerOptions? options = null) =>
        RateQuestion.Answer(new(curve, options), at);

    /// <summary>Correlation of two frames of one burst at a speed, about the rate of their day, however far the speed lies from those tested; null where the rate is left open.</summary>
    public static double? BurstCorrelation(this KeeperCurve curve, ShutterSpeed at, AnswerOptions? options = null) =>
        LuckUsed.Of(new(curve, (options ?? AnswerOptions.Default) with { BeyondTested = true }), at.Log2Seconds).Correlation;

    /// <summary>Exposure at which half the frames are keepers.</summary>
    public static ExposureAnswer HalfKeeperExposure(this KeeperCurve curve, AnswerOptions? options = null) =>
        curve.ExposureFor(0.5, options);

    /// <summary>Exposure that has a keeper rate.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="rate">Wanted keeper rate, between 0 and 1.</param>
    /// <param name="options">How to answer.</param>
    public static ExposureAnswer ExposureFor(this KeeperCurve curve, double rate, AnswerOptions? options = null)
    {
        Question question = new(curve, options);
        return ExposureQuestion.Answer(question, Question.CheckedProbability(rate, "wanted rate"));
    }

    /// <summary>Slowest marked speed whose keeper rate is at least <paramref name="rate"/> with probability <paramref name="assurance"/>.</summary>
    public static SlowestAnswer Slowest(this KeeperCurve curve, double rate, double assurance, AnswerOptions? options = null)
    {
        Question question = new(curve, options);
        _ = Question.CheckedProbability(rate, "wanted rate");
        return SlowestQuestion.Answer(
            question,
            $"a keeper rate of at least {Say.Percent(rate)}",
            Question.CheckedProbability(assurance, "assurance"),
            (q, x) => 1 - q.Law.RateCdf(x, rate)
        );
    }

    /// <summary>Slowest marked speed at which <paramref name="frames"/> frames of one burst bring at least <paramref name="keepers"/> keepers with probability <paramref name="assurance"/>.</summary>
    public static SlowestAnswer SlowestFor(this KeeperCurve curve, int frames, int keepers, double assurance, AnswerOptions? options = null)
    {
        Question question = new(curve, options);
        if (Question.CheckedCount(keepers, "The number of keepers") > Question.CheckedCount(frames, "The number of frames"))
            throw new ArgumentException(
                FormattableString.Invariant($"{keepers} keepers cannot come of {frames} frames. Ask for fewer keepers or more frames.")
            );
        return SlowestQuestion.Answer(
            question,
            $"at least {Say.Keepers(keepers)} in {Say.Frames(frames)}",
            Question.CheckedProbability(assurance, "assurance"),
            (q, x) => ShootLaw.For(q, x).AtLeast(keepers, frames, default)
        );
    }

    /// <summary>Smallest number of frames that brings at least <paramref name="keepers"/> keepers with probability <paramref name="assurance"/>.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="at">Shutter speed of the shoot.</param>
    /// <param name="keepers">Keepers wanted, at least 1.</param>
    /// <param name="assurance">Chance wanted, between 0 and 1.</param>
    /// <param name="options">How to answer: day, bursts, budget.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FramesNeededAnswer FramesNeeded(
        this KeeperCurve curve,
        ShutterSpeed at,
        int keepers,
        double assurance,
        AnswerOptions? options = null,
        CancellationToken cancellation = default
    ) =>
        FramesQuestion.Answer(
            new(curve, options),
            at,
            Question.CheckedCount(keepers, "The number of keepers"),
            Question.CheckedProbability(assurance, "assurance"),
            cancellation
        );

    /// <summary>How many keepers <paramref name="frames"/> frames will bring.</summary>
    public static KeeperCountAnswer KeepersToExpect(
        this KeeperCurve curve,
        ShutterSpeed at,
        int frames,
        AnswerOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        _ = Question.CheckedCount(frames, "The number of frames");
        return CountQuestion.Answer(new(curve, options), at, frames, cancellation);
    }

    /// <summary>How many stops slower this curve allows than <paramref name="reference"/> at a keeper rate.</summary>
    public static StopsDifference SlowerThan(this KeeperCurve curve, KeeperCurve reference, double rate, AnswerOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(reference);
        return CompareQuestion.Answer(reference, curve, Question.CheckedProbability(rate, "rate"), options ?? AnswerOptions.Default);
    }

    /// <summary>How many stops slower a curve with terms, or with levels that vary, allows under some conditions than under others, at a keeper rate.</summary>
    /// <param name="curve">A curve with terms, or with levels that vary.</param>
    /// <param name="conditions">The side that is asked for.</param>
    /// <param name="reference">The other side.</param>
    /// <param name="rate">Keeper rate at which they are compared, between 0 and 1.</param>
    /// <param name="options">How to answer; its conditions hold on both sides where a side does not say otherwise.</param>
    /// <exception cref="ConditionsException">A term was not stated, or stated as something that no frame had.</exception>
    public static StopsDifference SlowerUnder(
        this KeeperCurve curve,
        Conditions conditions,
        Conditions reference,
        double rate,
        AnswerOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(reference);
        var all = options ?? AnswerOptions.Default;
        var (a, b) = (reference.Or(all.Conditions), conditions.Or(all.Conditions));
        LevelsMeant.CheckApart(curve, all.Whose, a, b);
        var statuses = DaysOfSides.Remarks(curve, a, b);
        if (curve.Term is { } term)
            return TermDifference.Between(
                curve,
                term,
                all.Whose,
                a,
                b,
                Question.CheckedProbability(rate, "rate"),
                otherDays: !statuses.IsEmpty && all.Day == Day.Another,
                statuses
            );
        return LinearDifference.Between(
            new(curve, all with { Conditions = a }),
            new(curve, all with { Conditions = b }),
            Question.CheckedProbability(rate, "rate"),
            statuses
        );
    }

    /// <summary>The rate along exposures from <paramref name="fastest"/> to <paramref name="slowest"/>, for drawing.</summary>
    public static CurveBand Band(
        this KeeperCurve curve,
        ShutterSpeed fastest,
        ShutterSpeed slowest,
        int points = 81,
        AnswerOptions? options = null
    )
    {
        Question question = new(curve, options);
        return CurveBand.Of(question.Law, question.Level, fastest.Log2Seconds, slowest.Log2Seconds, Math.Max(2, points));
    }

    /// <summary>How lucky each tested day was, and whether the days show progress beyond luck. Costs a fit or two.</summary>
    /// <exception cref="ArgumentException">The curve was fitted without luck of days.</exception>
    public static DaysAnswer Days(this KeeperCurve curve, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return DaysQuestion.Answer(curve, cancellation);
    }
}
