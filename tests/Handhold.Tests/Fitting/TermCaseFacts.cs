using System.Text.Json;
using Handhold.Curves;

namespace Handhold.Tests.Fitting;

/// <summary>Posteriors with terms against sums over product grids that another program did; see golden/posterior-terms.</summary>
public sealed class TermCaseFacts
{
    private const double Moment = 0.03; // of an sd
    private const double Tail = 0.004;
    private const double Middle = 0.012; // the probability of 3 % of an sd at the middle

    private static readonly (string What, double P, double Tolerance)[] Points =
    [
        ("q025", 0.025, Tail),
        ("q50", 0.5, Middle),
        ("q975", 0.975, Tail),
    ];

    public static TheoryData<string> Cases => [.. TermCase.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Parameters_equal_brute_force(string name)
    {
        var expected = TermCase.All.Single(c => c.Name == name);
        var fit = expected.Fit();
        Near($"{name}, log evidence", expected.LogEvidence, fit.LogEvidence, 0.02);
        foreach (var (golden, curve) in expected.In(fit))
        {
            Assert.Equal(
                golden.GetProperty("parameters").EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal),
                curve.Parameters.Select(p => p.Name).Order(StringComparer.Ordinal)
            );
            foreach (var parameter in golden.GetProperty("parameters").EnumerateObject())
                Same($"{name}, {curve.Key}, {parameter.Name}", parameter.Value, curve.Term!.Values(Value(curve, parameter.Name)));
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Answers_equal_brute_force(string name)
    {
        var expected = TermCase.All.Single(c => c.Name == name);
        foreach (var (golden, curve) in expected.In(expected.Fit()))
        {
            EffectsEqual(golden.GetProperty("effects"), curve, name);
            foreach (var rate in golden.GetProperty("rates").EnumerateArray())
                RateEquals(rate, curve, name);
            if (golden.TryGetProperty("changes", out var changes))
                foreach (var change in changes.EnumerateArray())
                    Same(
                        $"{name}, change {change.GetProperty("from")} to {change.GetProperty("to")}",
                        change,
                        curve.Term!.ExposureChange(
                            Asked(curve, change.GetProperty("from")),
                            Asked(curve, change.GetProperty("to")),
                            change.GetProperty("rate").GetDouble(),
                            otherDays: false
                        )!
                    );
        }
    }

    /// <summary>Each end of an interval lies where the tail's probability is 0.004 more or less.</summary>
    private static void EffectsEqual(JsonElement expected, KeeperCurve curve, string name)
    {
        Assert.Equal(expected.GetArrayLength(), curve.InStops.Length);
        foreach (var (golden, effect) in expected.EnumerateArray().Zip(curve.InStops))
        {
            double Golden(string what) => golden.GetProperty(what).GetDouble();
            var at = string.Join(", ", effect.At.Select(a => FormattableString.Invariant($"{a.Key} {a.Value}")));
            Assert.Equal(golden.GetProperty("term").GetString(), effect.Term);
            Assert.Equal(string.Join(", ", golden.GetProperty("at").EnumerateObject().Select(p => $"{p.Name} {p.Value.GetRawText()}")), at);
            Near($"{name}, {curve.Key}, {effect.Term} at {at}", Golden("q50"), effect.Stops!.Value.Value, Moment * Golden("sd"));
            Assert.InRange(effect.Lower!.Value, Golden("q021"), Golden("q029"));
            Assert.InRange(effect.Upper!.Value, Golden("q971"), Golden("q979"));
        }
    }

    private static void RateEquals(JsonElement expected, KeeperCurve curve, string name)
    {
        var x = expected.GetProperty("log2Seconds").GetDouble();
        var law = curve.PosteriorUnder(TermCase.Under(expected.GetProperty("under"))).AnotherDay;
        var what = FormattableString.Invariant($"{name}, {curve.Key}, rate at {x} under {expected.GetProperty("under")}");
        Near($"{what}, mean", expected.GetProperty("mean").GetDouble(), law.MeanRate(x), 0.003);
        foreach (var (point, p, tolerance) in Points)
            if (expected.TryGetProperty(point, out var value))
                Near($"{what}, {point}", p, law.RateCdf(x, value.GetDouble()), tolerance);
    }

    private static void Same(string what, JsonElement expected, WeightedValues values)
    {
        double Golden(string point) => expected.GetProperty(point).GetDouble();
        Near($"{what}, mean", Golden("mean"), values.Mean, Moment * Golden("sd"));
        Near($"{what}, sd", Golden("sd"), values.StandardDeviation, Moment * Golden("sd"));
        foreach (var (point, p, tolerance) in Points)
            Near($"{what}, {point}", p, values.Below(Golden(point)), tolerance);
    }

    private static Conditions Asked(KeeperCurve curve, JsonElement stated) => TermCase.Under(stated).Or(curve.Term!.Moved.Shared);

    private static Func<TermDraw, double> Value(KeeperCurve curve, string parameter)
    {
        var place = curve.Term!.Moved.Effects.Select(e => e.Name).ToList().IndexOf(parameter);
        return parameter switch
        {
            "tau0" => d => d.Tau0,
            "log2b" => d => d.LogSteepness / Math.Log(2),
            "ceiling" => d => d.Ceiling,
            "sessionLuck" => d => d.SessionSd,
            "burstLuck" => d => d.BurstSd,
            _ => d => d.Effects[place],
        };
    }

    private static void Near(string what, double expected, double value, double tolerance) =>
        Assert.True(
            Math.Abs(value - expected) <= tolerance,
            FormattableString.Invariant($"{what}: {value} against {expected}, tolerance {tolerance}")
        );
}
