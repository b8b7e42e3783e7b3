using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>Difference in stops between two curves at a rate, from the two distributions of the exposure for that rate.</summary>
internal static class CompareQuestion
{
    private const double Step = 0.01; // stops
    private const double Tail = 1e-7;

    internal static StopsDifference Answer(KeeperCurve a, KeeperCurve b, double rate, AnswerOptions options)
    {
        if (a.Model.Estimator != b.Model.Estimator)
            throw new ArgumentException(
                $"One side was estimated by {a.Estimator}, the other by {b.Estimator}, and their intervals mean different things. Fit both with one estimator."
            );
        var statuses = DaysOfSides.Remarks(a, b);
        var shared = statuses.IsEmpty;
        if (a.Linear is not null && b.Linear is not null)
            return LinearDifference.Between(new(a, options), new(b, options), rate, statuses);
        Question[] sides = [new(a, options), new(b, options)];
        statuses = [.. statuses, .. sides.SelectMany(q => q.Throughout).DistinctBy(s => s.Message)];
        var (lawA, lawB) = (Law(a, b, shared, options), Law(b, a, shared, options));
        var (exposureA, exposureB) = (lawA.ExposureFor(rate), lawB.ExposureFor(rate));
        if (double.IsInfinity(exposureA.Quantile(0.05)) || double.IsInfinity(exposureB.Quantile(0.05)))
        {
            statuses = statuses.Add(
                new(
                    StatusCode.NotReachable,
                    $"A keeper rate of {Say.Percent(rate)} may be above the ceiling of one side, so the difference there is not defined. Compare at a lower rate."
                )
            );
            return new(a, b, rate, null, null, null, statuses);
        }

        foreach (var (question, exposure) in sides.Zip([exposureA.Quantile(0.5), exposureB.Quantile(0.5)]))
            if (!question.Tested(exposure))
                statuses = statuses.Add(question.Outside(ShutterSpeed.FromLog2Seconds(exposure), declined: false));

        var (fromA, massesA) = Masses(exposureA);
        var (fromB, massesB) = Masses(exposureB);
        var differences = new double[massesA.Length + massesB.Length - 1];
        for (var i = 0; i < massesA.Length; i++)
        for (var k = 0; k < massesB.Length; k++)
            differences[k + massesA.Length - 1 - i] += massesA[i] * massesB[k];
        var start = fromB - fromA - (massesA.Length - 1) * Step;
        HalfPointDensity density = new(start, Step, differences);
        HalfPointMixture mixture = new(ImmutableArray.Create(new MixturePart(1, density, 0)));
        var level = a.Model.Level;
        var interval = new CredibleInterval(mixture.Quantile((1 - level) / 2), mixture.Quantile((1 + level) / 2), level);
        return new(a, b, rate, new Stops(mixture.Quantile(0.5)), interval, 1 - density.Cdf(0), statuses)
        {
            BetterBy = stops => 1 - density.Cdf(stops),
        };
    }

    /// <summary>On a shared day its luck is on both sides and drops out; otherwise each side gets a day of its own.</summary>
    private static RateLaw Law(KeeperCurve curve, KeeperCurve other, bool shared, AnswerOptions options)
    {
        var posterior = VaryingLaw.Posterior(curve, options);
        return !shared && options.Day == Day.Another ? posterior.AnotherDay
            : DaysOfSides.Of(curve.Data.Cells).SetEquals(DaysOfSides.Of(other.Data.Cells)) && posterior.SameDay is { } same ? same
            : posterior.Habitual;
    }

    /// <summary>Probability masses of an exposure's distribution, conditional on being reachable, at the middles of narrow bins.</summary>
    private static (double From, double[] Masses) Masses(HalfPointMixture exposure)
    {
        var never = exposure.BelowEverything;
        var (low, high) = (exposure.Quantile(never + (1 - never) * Tail), exposure.Quantile(1 - (1 - never) * Tail));
        var masses = new double[Math.Max(2, (int)Math.Ceiling((high - low) / Step) + 1)];
        var before = exposure.Cdf(low - Step / 2);
        for (var i = 0; i < masses.Length; i++)
        {
            var upTo = exposure.Cdf(low + (i + 0.5) * Step);
            masses[i] = Math.Max(0, upTo - before);
            before = upTo;
        }

        return (low, masses);
    }
}
