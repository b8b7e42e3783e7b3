using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>Which exposure has a keeper rate.</summary>
internal static class ExposureQuestion
{
    internal static ExposureAnswer Answer(Question question, double rate)
    {
        var (answer, rejects) = (Judged(question, rate), question.AsRejects(q => Answer(q, rate)));
        if (rejects is null)
            return answer;
        var statuses = question.WithMissing(
            answer.Statuses,
            answer.Exposure is null || answer.Set.Pieces is not [{ Lower: var lower }] ? null
                : rejects.Exposure is not { } other ? "no speed could be named"
                : other.Log2Seconds < lower ? $"it would be {MarkedSpeeds.Told(other, Marks.Third)}, outside the interval"
                : null
        );
        return new(question, rate, answer.Exposure, answer.Set, answer.WithinTested, statuses) { AsRejects = rejects };
    }

    private static ExposureAnswer Judged(Question question, double rate)
    {
        if (question.Law is ILineLaw line)
            return OnLine(question, line, rate);
        var exposures = Exposures(question, rate);
        var (median, set) = (exposures.Quantile(0.5), exposures.Set(question.Level));
        if (set.Pieces.IsEmpty || double.IsInfinity(median))
            return Unreachable(question, rate, set);
        var exposure = ShutterSpeed.FromLog2Seconds(median);
        ImmutableArray<Status> statuses = question.Tested(median)
            ? []
            : [question.Outside(MarkedSpeeds.Told(exposure, Marks.Third), declined: question.Declined(median))];
        statuses = question.WithPriorCheck([.. statuses, .. question.Throughout], q => Median(q, rate), "the exposure");
        return new(question, rate, question.Declined(median) ? null : exposure, set, question.Tested(median), statuses);
    }

    private static double? Median(Question question, double rate)
    {
        var median = Exposures(question, rate).Quantile(0.5);
        return double.IsInfinity(median) ? null : Math.Pow(2, median);
    }

    private static HalfPointMixture Exposures(Question question, double rate) => ((IExposureLaw)question.Law).ExposureFor(rate);

    private static Status Flat { get; } =
        new(StatusCode.FlatNotExcluded, "The fitted curve does not change with the exposure, so no exposure can be named for a rate.");

    private static ExposureAnswer OnLine(Question question, ILineLaw law, double rate)
    {
        var (found, set) = (law.Exposure(rate), law.Set(rate, question.Level, question.Options.Intervals));
        if (set.Kind == ExposureSetKind.NotReachable)
            return new(
                question,
                rate,
                null,
                set,
                false,
                [
                    question.Curve.Linear is { HasExposure: false }
                        ? question.Curve.Statuses.First(s => s.Code == StatusCode.SingleExposure)
                        : new(
                            StatusCode.NotReachable,
                            $"A keeper rate of {Say.Percent(rate)} is not between the floor and the ceiling of this curve: no speed has it. Look for what spoils frames besides shake: focus, the subject, the judging."
                        ),
                ]
            );
        if (found is not { } log2Seconds)
            return new(question, rate, null, set, false, [.. question.Throughout.DefaultIfEmpty(Flat)]);
        var exposure = ShutterSpeed.FromLog2Seconds(log2Seconds);
        var declined = question.Declined(log2Seconds);
        ImmutableArray<Status> statuses = question.Tested(log2Seconds)
            ? []
            : [question.Outside(MarkedSpeeds.Told(exposure, Marks.Third), declined)];
        return new(question, rate, declined ? null : exposure, set, question.Tested(log2Seconds), [.. statuses, .. question.Throughout]);
    }

    private static ExposureAnswer Unreachable(Question question, double rate, ExposureSet set)
    {
        Status status = new(
            StatusCode.NotReachable,
            $"A keeper rate of {Say.Percent(rate)} is probably above the ceiling of this curve: no speed, however fast, would have it. Look for what spoils frames besides shake: focus, the subject, the judging."
        );
        return new(question, rate, null, set, false, [status, .. question.Throughout]);
    }
}
