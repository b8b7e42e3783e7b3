using System.Text.Json;
using Handhold.Curves;

namespace Handhold.Tests.Fitting;

/// <summary>Posteriors and answers against integrals that other programs did by brute force, of invented and of published tables.</summary>
public sealed class BruteForceFacts
{
    private const double Moment = 0.005; // of an sd
    private const double Probability = 5e-4;

    private static readonly (string What, double P)[] Points = [("q025", 0.025), ("q50", 0.5), ("q975", 0.975)];

    public static TheoryData<string> Cases => [.. BruteForceCase.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Posterior_equals_brute_force(string name)
    {
        var expected = BruteForceCase.All.Single(c => c.Name == name);
        var fit = expected.Fit();
        Assert.Equal(expected.LogEvidence, fit.LogEvidence, 1e-4);
        foreach (var (golden, curve) in expected.In(fit))
            PosteriorEquals(golden, curve, $"{name}, {curve.Key}");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Answers_equal_brute_force(string name)
    {
        var expected = BruteForceCase.All.Single(c => c.Name == name);
        foreach (var (golden, curve) in expected.In(expected.Fit()))
            AnswersEqual(golden, curve.Posterior.AnotherDay, $"{name}, {curve.Key}");
    }

    private static void PosteriorEquals(JsonElement expected, KeeperCurve curve, string place)
    {
        foreach (var parameter in expected.GetProperty("parameters").EnumerateObject())
        {
            var ours = curve.Parameters.Single(p => p.Name == parameter.Name);
            double Golden(string what) => parameter.Value.GetProperty(what).GetDouble();
            void Within(string what, double value, double sds) =>
                Near($"{place}, {parameter.Name}, {what}", Golden(what), value, sds * Golden("sd"));
            Within("mean", ours.Mean, Moment);
            Within("sd", ours.StandardDeviation, Moment);
            if (parameter.Name == "tau0")
                continue; // its tail probabilities are checked below, exactly
            // A shift of a quantile times the normal density there is, nearly, the error of its tail probability.
            Within("q025", ours.Interval.Lower, Probability / 0.0584);
            Within("q50", ours.Median, Probability / 0.3989);
            Within("q975", ours.Interval.Upper, Probability / 0.0584);
        }

        var tau = expected.GetProperty("parameters").GetProperty("tau0");
        HalfPointMixture habitual = new(curve.Posterior.HabitualAtoms);
        foreach (var (what, p) in Points)
            Near($"{place}, tau0, {what}", p, habitual.Cdf(tau.GetProperty(what).GetDouble()), Probability);
    }

    private static void AnswersEqual(JsonElement expected, RateLaw law, string place)
    {
        foreach (var rate in expected.GetProperty("rates").EnumerateArray())
        {
            var x = rate.GetProperty("log2Seconds").GetDouble();
            double Golden(string what) => rate.GetProperty(what).GetDouble();
            void Agree(string what, double golden, double value) =>
                Near(FormattableString.Invariant($"{place}, rate at {x}, {what}"), golden, value, Probability);
            Agree("mean", Golden("mean"), law.MeanRate(x));
            foreach (var (what, p) in Points)
                Agree(what, p, law.RateCdf(x, Golden(what)));
            Agree("1 of 3", Golden("atLeast1of3"), law.BurstRates(x).AtLeast(1, 3));
            Agree("2 of 6", Golden("atLeast2of6"), law.BurstRates(x).AtLeast(2, 6));
            var fewer = new BurstsLaw(law, x).Fewer(2, 2, 3, 0, TestContext.Current.CancellationToken).Sum();
            Agree("2 of 6 in 3s", Golden("atLeast2of6InBurstsOf3"), 1 - fewer);
        }

        foreach (var exposure in expected.GetProperty("exposures").EnumerateArray())
        {
            var rate = exposure.GetProperty("rate").GetDouble();
            var exposures = law.ExposureFor(rate);
            foreach (var (what, p) in Points)
                if (exposure.TryGetProperty(what, out var value))
                    Near(
                        FormattableString.Invariant($"{place}, exposure for {rate}, {what}"),
                        p,
                        exposures.Cdf(value.GetDouble()),
                        Probability
                    );
        }
    }

    private static void Near(string what, double expected, double value, double tolerance) =>
        Assert.True(
            Math.Abs(value - expected) <= tolerance,
            FormattableString.Invariant($"{what}: {value} against {expected}, tolerance {tolerance}")
        );
}
