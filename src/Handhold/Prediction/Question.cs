using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Fitting;

namespace Handhold.Prediction;

/// <summary>One curve under one set of options: which law answers, what was tested, and what to say of it.</summary>
internal sealed class Question
{
    private const double Hair = 1e-9;
    private readonly Sampling? _levels; // that are asked for

    internal Question(KeeperCurve curve, AnswerOptions? options)
    {
        ArgumentNullException.ThrowIfNull(curve);
        Curve = curve;
        Options = options ?? AnswerOptions.Default;
        if (Options.Budget < 1)
            throw new ArgumentException(FormattableString.Invariant($"The budget is {Options.Budget} frames. Give at least 1."));
        if (Options.BurstsOf is < 1)
            throw new ArgumentException(FormattableString.Invariant($"Bursts of {Options.BurstsOf} frames cannot be. Give at least 1."));
        if (Options.Whose is not (null or Whose.This) && curve.Linear?.Likelihood.Grouped is null && curve.Varying is null)
            throw new ConditionsException(
                "whose",
                $"Curve {curve.Key} stands for itself: no levels vary in this fit, so no other can be told of.",
                "Ask for this one, or let levels vary in the fit (--varies)."
            );
        (Law, _levels) =
            curve.Linear is { } linear ? (WhoseLaw.Of(linear, Options), null)
            : curve.Varying is { } varying ? VaryingLaw.Of(varying, curve, Options)
            : Options.Day == Day.Another ? (curve.PosteriorUnder(Options.Conditions).AnotherDay, null)
            : (SameDay(), null);
    }

    internal KeeperCurve Curve { get; }

    internal AnswerOptions Options { get; }

    internal IRateLaw Law { get; }

    internal double Level => Curve.Model.Level;

    private double Fastest => Curve.Data.Fastest.Log2Seconds;

    private double Slowest => Curve.Data.Slowest.Log2Seconds;

    internal bool Tested(double exposure) => exposure >= Fastest - Hair && exposure <= Slowest + Hair;

    /// <summary>The tested day: the only one, or the one that is named.</summary>
    private RateLaw SameDay()
    {
        if (Curve.TestedDays is not { } tested)
            return Curve.PosteriorUnder(Options.Conditions).SameDay!;
        var (day, said) = (TestedDay.Of(Curve, Options.Conditions), Options.Conditions);
        return Curve.Data.Days.Length == 1
            ? Curve.PosteriorUnder(said).SameDay!
            : tested.Value.On(day, Curve.Term is { } term ? said.Or(term.Moved.Shared) : Conditions.None);
    }

    /// <summary>Whether an exposure is too far from those tested to be answered by default.</summary>
    internal bool Declined(double exposure) =>
        (Curve.Linear is { HasExposure: false } && !Tested(exposure))
        || !Options.BeyondTested && (exposure < Fastest - 1 - Hair || exposure > Slowest + 1 + Hair);

    /// <summary>The rate; null where the data leave it open altogether.</summary>
    internal RateEstimate? Rate(double exposure)
    {
        var (mean, median) = (Law.MeanRate(exposure), Law.RateQuantile(exposure, 0.5));
        var (lower, upper) = (Law.RateQuantile(exposure, (1 - Level) / 2), Law.RateQuantile(exposure, (1 + Level) / 2));
        return double.IsNaN(mean) ? null
            : Curve.Linear is null ? new(median, mean, new CredibleInterval(lower, upper, Level))
            : new(median, mean, new ConfidenceInterval(lower, upper, Level, ((ILineLaw)Law).Method));
    }

    /// <summary>Why there is no answer at an exposure: it was not tested near there, or the likelihood fits any rate there equally well.</summary>
    internal Status? Barred(ShutterSpeed at) =>
        Declined(at.Log2Seconds) ? Outside(at, declined: true)
        : double.IsNaN(Law.MeanRate(at.Log2Seconds))
            ? new(
                StatusCode.Separated,
                $"Keepers and rejects separate, and any rate at {at} fits them equally well. Use the bias-reduced or posterior estimator, or shoot frames there."
            )
        : null;

    /// <summary>What to say of an answer at an exposure: beyond the speeds tested, and what bears on every answer.</summary>
    internal ImmutableArray<Status> Remarks(ShutterSpeed at) =>
        [.. Tested(at.Log2Seconds) ? [] : new[] { Outside(at, declined: false) }, .. Throughout];

    /// <summary>What bears on every answer: a likelihood without a maximum, and points that stand badly for the day or the levels asked for.</summary>
    internal IEnumerable<Status> Throughout =>
        Curve.Linear is { Likelihood.Estimate: null }
            ? Curve.Statuses.Where(s =>
                s.Code is StatusCode.Separated or StatusCode.QuasiSeparated or StatusCode.AllKeepers or StatusCode.NoKeepers
            )
        : IsRoughDay ? [DaysQuestion.Rough]
        : _levels is { } levels && VaryingStatuses.Of(levels) is { } rough ? [rough]
        : [];

    /// <summary>Whether the answer is for one of several days, and stands on points that are few.</summary>
    private bool IsRoughDay =>
        Options.Day == Day.Same && Curve.Data.Days.Length > 1 && Curve.TestedDays?.Value.Sampling is { IsPoor: true };

    internal Status Outside(ShutterSpeed at, bool declined)
    {
        var range =
            Curve.Data.Speeds.Length == 1
                ? $"only {Curve.Data.Fastest} was tested"
                : $"{Curve.Data.Fastest} to {Curve.Data.Slowest} were tested";
        return new(
            StatusCode.OutsideTestedRange,
            declined
                ? $"{at} is more than one stop beyond the speeds tested ({range}), so no number is given. Shoot a few frames there, or ask beyond the tested speeds knowingly."
                : $"{at} lies beyond the speeds tested ({range}): the curve is stretched there. A few frames at {at} would settle it."
        );
    }

    /// <summary>The status that an answer rests on the prior, when the same question under wider or narrower priors moves it by more than a factor of two.</summary>
    internal ImmutableArray<Status> WithPriorCheck(ImmutableArray<Status> statuses, Func<Question, double?> ask, string what)
    {
        if (!Options.CheckPriors || Curve.Linear is not null)
            return statuses;
        var (same, widened, narrowed) = Curve.OtherPriors.Value;
        var answer = ask(new(same, Options));
        if (WithinTwofold(answer, ask(new(widened, Options))) && WithinTwofold(answer, ask(new(narrowed, Options))))
            return statuses;
        return statuses.Add(
            new(
                StatusCode.RestsOnPrior,
                $"The data leave {what} to the priors of steepness and luck{(Curve.Varying is null ? "" : ", or of how levels spread")}: doubling or halving their widths moves it by more than a factor of two. More frames around the half-keeper speed would settle it."
            )
        );
    }

    /// <summary>The answer of the curve that takes frames not judged for rejects; null where all were judged.</summary>
    internal TAnswer? AsRejects<TAnswer>(Func<Question, TAnswer> ask)
        where TAnswer : class
    {
        if (!Options.CheckMissing || Curve.AsRejects is not { } rejects)
            return null;
        return ask(new(rejects.Value, Options with { CheckPriors = false }));
    }

    /// <summary>The status that an answer rests on frames not judged.</summary>
    /// <param name="statuses">The statuses so far.</param>
    /// <param name="changed">What the answer would be, in words that follow "were they all rejects,"; null where the decision stands.</param>
    internal ImmutableArray<Status> WithMissing(ImmutableArray<Status> statuses, string? changed)
    {
        if (changed is null)
            return statuses;
        var missing = Curve.Data.NotJudged.Sum(c => c.Unjudged);
        return statuses.Add(
            new(
                StatusCode.RestsOnMissing,
                $"The answer rests on {Say.Frames(missing)} not judged: {(missing == 1 ? "was it a reject" : "were they all rejects")}, {changed}. Judge them, or take the more cautious answer."
            )
        );
    }

    private static bool WithinTwofold(double? a, double? b) =>
        a is { } one && b is { } other ? Math.Abs(Math.Log2(one / other)) <= 1 : a is null && b is null;

    internal static double CheckedProbability(double value, string what) =>
        value is > 0 and < 1
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"The {what} is {value}. It must lie between 0 and 1, such as 0.9."));

    internal static int CheckedCount(int value, string what) =>
        value >= 1 ? value : throw new ArgumentException(FormattableString.Invariant($"{what} is {value}. Give at least 1."));
}
