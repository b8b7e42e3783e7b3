using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>Difference in stops between two conditions of one posterior with terms, point by point: what both sides share drops out.</summary>
internal static class TermDifference
{
    internal static StopsDifference Between(
        KeeperCurve curve,
        TermPosterior term,
        Whose? whose,
        Conditions reference,
        Conditions conditions,
        double rate,
        bool otherDays,
        ImmutableArray<Status> statuses
    )
    {
        var (from, to) = (reference.Or(term.Moved.Shared), conditions.Or(term.Moved.Shared));
        statuses = [.. statuses, .. VaryingLaw.Remarks(curve, whose, from, to)];
        if (
            (
                curve.Varying is { } varying
                    ? VaryingLaw.ExposureChange(varying, whose, from, to, rate, otherDays)
                    : term.ExposureChange(from, to, rate, otherDays)
            )
            is not { } change
        )
            return new(
                curve,
                curve,
                rate,
                null,
                null,
                null,
                [
                    .. statuses,
                    new(
                        StatusCode.NotReachable,
                        $"A keeper rate of {Say.Percent(rate)} may be above the ceiling, so the difference there is not defined. Compare at a lower rate."
                    ),
                ]
            )
            {
                ConditionsOfA = reference,
                ConditionsOfB = conditions,
            };
        var level = curve.Model.Level;
        CredibleInterval interval = new(change.Quantile((1 - level) / 2), change.Quantile((1 + level) / 2), level);
        return new(curve, curve, rate, new Stops(change.Quantile(0.5)), interval, 1 - change.Below(0), statuses)
        {
            ConditionsOfA = reference,
            ConditionsOfB = conditions,
            BetterBy = by => 1 - change.Below(by),
        };
    }
}
