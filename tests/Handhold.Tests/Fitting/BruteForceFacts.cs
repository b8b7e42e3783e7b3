using System.Globalization;
using System.Text.Json;
using Handhold.Curves;

namespace Handhold.Tests.Fitting;

/// <summary>Posteriors and answers against integrals that another program did by brute force: shared/golden/posterior-brute-force.</summary>
public sealed class BruteForceFacts
{
    private const double Moment = 0.005; // of an sd
    private const double Probability = 5e-4;

    public static TheoryData<string> Cases => [.. Expected().Select(c => c.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Posterior_equals_brute_force(string name)
    {
        var expected = Expected().Single(c => c.GetProperty("name").GetString() == name);
        var fit = Fit(expected);
        var curve = fit.Only;
        Assert.Equal(expected.GetProperty("logEvidence").GetDouble(), fit.LogEvidence, 1e-4);
        foreach (var parameter in expected.GetProperty("parameters").EnumerateObject())
        {
            var ours = curve.Parameters.Single(p => p.Name == parameter.Name);
            var sd = parameter.Value.GetProperty("sd").GetDouble();
            void Near(string what, double value, double tolerance) =>
                Assert.True(
                    Math.Abs(value - parameter.Value.GetProperty(what).GetDouble()) <= tolerance * sd,
                    FormattableString.Invariant(
                        $"{name}, {parameter.Name}, {what}: {value} against {parameter.Value.GetProperty(what).GetDouble()}, sd {sd}"
                    )
                );
            Near("mean", ours.Mean, Moment);
            Near("sd", ours.StandardDeviation, Moment);
            if (parameter.Name == "tau0")
                continue; // its tail probabilities are checked below, exactly
            // A shift of a quantile times the normal density there is, nearly, the error of its tail probability.
            Near("q025", ours.Interval.Lower, Probability / 0.0584);
            Near("q50", ours.Median, Probability / 0.3989);
            Near("q975", ours.Interval.Upper, Probability / 0.0584);
        }

        var tau = expected.GetProperty("parameters").GetProperty("tau0");
        HalfPointMixture habitual = new(curve.Posterior.HabitualAtoms);
        foreach (var (what, p) in new[] { ("q025", 0.025), ("q50", 0.5), ("q975", 0.975) })
            Assert.Equal(p, habitual.Cdf(tau.GetProperty(what).GetDouble()), Probability);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Answers_equal_brute_force(string name)
    {
        var expected = Expected().Single(c => c.GetProperty("name").GetString() == name);
        var curve = Fit(expected).Only;
        var law = curve.Posterior.AnotherDay;
        void Near(string what, double expectedValue, double value, double tolerance = Probability) =>
            Assert.True(
                Math.Abs(value - expectedValue) <= tolerance,
                FormattableString.Invariant($"{name}, {what}: {value} against {expectedValue}")
            );
        foreach (var rate in expected.GetProperty("rates").EnumerateArray())
        {
            var x = rate.GetProperty("log2Seconds").GetDouble();
            double Golden(string what) => rate.GetProperty(what).GetDouble();
            Near("mean", Golden("mean"), law.MeanRate(x));
            Near("q025", 0.025, law.RateCdf(x, Golden("q025")));
            Near("q50", 0.5, law.RateCdf(x, Golden("q50")));
            Near("q975", 0.975, law.RateCdf(x, Golden("q975")));
            Near("1 of 3", Golden("atLeast1of3"), law.BurstRates(x).AtLeast(1, 3));
            Near("2 of 6", Golden("atLeast2of6"), law.BurstRates(x).AtLeast(2, 6));
            Near(
                "2 of 6 in 3s",
                Golden("atLeast2of6InBurstsOf3"),
                1 - new BurstsLaw(law, x, 3).Fewer(2, 2, 3, 0, TestContext.Current.CancellationToken).Sum()
            );
        }

        foreach (var exposure in expected.GetProperty("exposures").EnumerateArray())
        {
            var exposures = law.ExposureFor(exposure.GetProperty("rate").GetDouble());
            foreach (var (what, p) in new[] { ("q025", 0.025), ("q50", 0.5), ("q975", 0.975) })
                if (exposure.TryGetProperty(what, out var value) && value.ValueKind == JsonValueKind.Number)
                    Near($"exposure {what}", p, exposures.Cdf(value.GetDouble()));
        }
    }

    private static FittedCurves Fit(JsonElement expected)
    {
        var options = expected.GetProperty("options");
        var ceiling = options.GetProperty("ceiling").GetString()!;
        var floor = options.GetProperty("floor").GetString()!;
        var (tau, steepness) = (options.GetProperty("tauPrior"), options.GetProperty("steepnessPrior"));
        KeeperModel model = new()
        {
            Ceiling = ceiling switch
            {
                "estimated" => Ceiling.Estimated,
                "one" => Ceiling.One,
                _ => Ceiling.Fixed(double.Parse(ceiling, CultureInfo.InvariantCulture)),
            },
            Floor = floor == "estimated" ? Floor.Estimated : Floor.Fixed(double.Parse(floor, CultureInfo.InvariantCulture)),
            Luck = options.GetProperty("luck").GetString() == "none" ? LuckKind.None : LuckKind.Normal,
            Priors = Priors.Default with
            {
                HalfPoint = new(tau.GetProperty("mean").GetDouble(), tau.GetProperty("sd").GetDouble()),
                Steepness = new(steepness.GetProperty("median").GetDouble(), steepness.GetProperty("logSd").GetDouble()),
            },
        };
        return model.Fit(Table(expected.GetProperty("table").GetString()!), cancellation: TestContext.Current.CancellationToken);
    }

    private static FrameTable Table(string file) => FrameTable.Create([.. GoldenFolder.Rows("posterior-brute-force", file).Select(Cell)]);

    private static FrameCell Cell(IReadOnlyDictionary<string, string> row) =>
        new(ShutterSpeed.FromSeconds(row.Number("exposure_s")), (int)row.Number("frames"), (int)row.Number("keepers"))
        {
            Conditions = new() { Session = Label(row, "session"), Burst = Label(row, "burst") },
        };

    private static string? Label(IReadOnlyDictionary<string, string> row, string column) =>
        row.TryGetValue(column, out var label) && label.Length > 0 ? label : null;

    private static JsonElement[] Expected() =>
        [
            .. JsonDocument
                .Parse(File.ReadAllText(GoldenFolder.PathOf("posterior-brute-force", "expected.json")))
                .RootElement.GetProperty("cases")
                .EnumerateArray(),
        ];
}
