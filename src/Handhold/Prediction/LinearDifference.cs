using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Prediction;

/// <summary>Stops between two lines at a keeper rate, for curves without a posterior.</summary>
/// <remarks>
/// Lines of one fit with one slope: the t with (B - A)·b + t slope·b = 0, by profile. Lines of two fits: the likelihoods are independent, and what both lose
/// together is least over where the pair stands. Lines of one fit with different slopes: estimate and standard error (delta). Lines of levels that vary: see <see cref="GroupedLaw"/>.
/// </remarks>
internal static class LinearDifference
{
    internal static StopsDifference Between(Question a, Question b, double rate, ImmutableArray<Status> statuses)
    {
        var (lawA, lawB) = ((ILineLaw)a.Law, (ILineLaw)b.Law);
        CheckSides(lawA, lawB);
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
        var (signedRoot, method) = Sides(lawA, lawB, rate, difference);
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
        if (difference == 0 && lawA is GroupedLaw)
            statuses = statuses.Add(
                new(
                    StatusCode.NoGroupSpread,
                    "Levels are estimated to be all alike, so nothing is left between the two: how much the data do not exclude is told by the intervals of the spreads."
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

    private static (Func<double, double> SignedRoot, IntervalMethod Method) Sides(ILineLaw a, ILineLaw b, double rate, double difference) =>
        (a, b) switch
        {
            (ProfileLaw one, ProfileLaw other) => (
                one.StopsTo(other, rate, difference),
                one.ProfilesTo(other) ? IntervalMethod.Profile : IntervalMethod.Delta
            ),
            _ => (((GroupedLaw)a).StopsTo((GroupedLaw)b, rate, difference), IntervalMethod.Fieller),
        };

    private static void CheckSides(ILineLaw a, ILineLaw b)
    {
        if (a is GroupedLaw { IsOfLevels: false } || b is GroupedLaw { IsOfLevels: false })
            throw new ConditionsException(
                "whose",
                "The population's rate is an average over all levels, and averages are not compared.",
                "Ask whose this one, a typical one or a new one."
            );
        if (a is ProfileLaw != b is ProfileLaw)
            throw new ConditionsException(
                "whose",
                "Levels vary in the fit of one side and in that of the other they do not.",
                "Ask whose typical, or fit both sides alike."
            );
    }
}
