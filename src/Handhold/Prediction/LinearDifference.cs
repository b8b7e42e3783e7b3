using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Prediction;

/// <summary>Stops between two lines at a keeper rate, for curves without a posterior.</summary>
/// <remarks>
/// Lines of one fit with one slope: the t with (B - A)·b + t slope·b = 0, by profile. Lines of two fits: the likelihoods are independent, and what both lose
/// together is least over where the pair stands. Lines of one fit with different slopes: estimate and standard error (delta).
/// </remarks>
internal static class LinearDifference
{
    internal static StopsDifference Between(Question a, Question b, double rate, ImmutableArray<Status> statuses)
    {
        if (a.Law is not ProfileLaw lawA || b.Law is not ProfileLaw lawB)
            throw new ConditionsException(
                "whose",
                "Sides are compared for a typical level.",
                "Ask whose typical, or fit the sides as separate curves."
            );
        if (lawA.Exposure(rate) is not { } exposureA || lawB.Exposure(rate) is not { } exposureB)
            return new(
                a.Curve,
                b.Curve,
                rate,
                null,
                null,
                null,
                [
                    .. statuses,
                    new(
                        StatusCode.NotReachable,
                        $"One side has no finite estimate of the exposure with a keeper rate of {Say.Percent(rate)}, so the difference there is not defined. Ask for another rate, or use the bias-reduced estimator."
                    ),
                ]
            )
            {
                ConditionsOfA = a.Options.Conditions,
                ConditionsOfB = b.Options.Conditions,
            };
        var difference = exposureB - exposureA;
        Func<double, double> signedRoot = lawA.StopsTo(lawB, rate, difference);
        var method = lawA.ProfilesTo(lawB) ? IntervalMethod.Profile : IntervalMethod.Delta;
        var set = LineSet.ByRoots(difference, signedRoot, a.Level, method);
        ConfidenceInterval? interval = set is { Kind: ExposureSetKind.Bounded, Pieces: [{ Lower: { } lower, Upper: { } upper }] }
            ? new(lower, upper, a.Level, set.Method)
            : null;
        if (interval is null)
            statuses = statuses.Add(
                new(
                    StatusCode.FlatNotExcluded,
                    "The data bound the difference on one side at most: the steepness of a side is not established."
                )
            );
        foreach (var (question, exposure) in new[] { (a, exposureA), (b, exposureB) })
            if (!question.Tested(exposure))
                statuses = statuses.Add(question.Outside(ShutterSpeed.FromLog2Seconds(exposure), declined: false));
        return new(a.Curve, b.Curve, rate, new Stops(difference), interval, Better(0), statuses)
        {
            BetterBy = Better,
            ConditionsOfA = a.Options.Conditions,
            ConditionsOfB = b.Options.Conditions,
        };

        // The signed root is positive where the estimate is above the value held.
        double Better(double stops) => Normal.Cdf(signedRoot(stops));
    }
}
