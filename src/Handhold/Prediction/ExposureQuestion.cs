using System.Collections.Immutable;

namespace Handhold.Prediction;

/// <summary>Which exposure has a keeper rate.</summary>
internal static class ExposureQuestion
{
    internal static ExposureAnswer Answer(Question question, double rate)
    {
        var exposures = question.Law.ExposureFor(rate);
        var (low, median, high) = (
            exposures.Quantile((1 - question.Level) / 2),
            exposures.Quantile(0.5),
            exposures.Quantile((1 + question.Level) / 2)
        );
        if (double.IsInfinity(high) || double.IsInfinity(median))
            return Unreachable(question, rate, high);
        ExposureSet set = double.IsInfinity(low)
            ? new(ExposureSetKind.AtMost, [new(null, high)], "equalTailed")
            : new(ExposureSetKind.Bounded, [new(low, high)], "equalTailed");
        var exposure = ShutterSpeed.FromLog2Seconds(median);
        ImmutableArray<Status> statuses = question.Tested(median)
            ? []
            : [question.Outside(MarkedSpeeds.Told(exposure, Marks.Third), declined: question.Declined(median))];
        statuses = question.WithPriorCheck(statuses, q => Median(q, rate), "the exposure");
        return new(question.Curve, rate, question.Declined(median) ? null : exposure, set, question.Tested(median), statuses);
    }

    private static double? Median(Question question, double rate)
    {
        var median = question.Law.ExposureFor(rate).Quantile(0.5);
        return double.IsInfinity(median) ? null : Math.Pow(2, median);
    }

    private static ExposureAnswer Unreachable(Question question, double rate, double high)
    {
        var set = double.IsInfinity(high)
            ? new ExposureSet(ExposureSetKind.NotReachable, [], "equalTailed")
            : new ExposureSet(ExposureSetKind.AtMost, [new(null, high)], "equalTailed");
        Status status = new(
            StatusCode.NotReachable,
            $"A keeper rate of {Say.Percent(rate)} is probably above the ceiling of this curve: no speed, however fast, would have it. Look for what spoils frames besides shake: focus, the subject, the judging."
        );
        return new(question.Curve, rate, null, set, false, [status]);
    }
}
