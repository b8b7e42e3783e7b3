namespace Handhold.Tests.Estimators;

public class PublishedEstimateFacts
{
    private static FrameTable Budworm { get; } = PublishedTables.Table("budworm", "table.csv");

    public static TheoryData<string, string> Fits { get; } =
        new()
        {
            { "bliss", "ml" },
            { "budworm", "common_slope" },
            { "budworm", "interaction" },
            { "budworm", "one_curve" },
        };

    internal static KeeperCurve Fit(string caseName, string fit) =>
        fit switch
        {
            "common_slope" => PublishedTables.Likelihood.WithSex().Fit(Budworm).Only,
            "interaction" => PublishedTables.Likelihood.WithSexAndItsSlope().Fit(Budworm).Only,
            _ => PublishedTables.Likelihood.Fit(PublishedTables.Table(caseName, "table.csv")).Only,
        };

    [Theory]
    [MemberData(nameof(Fits))]
    public void Coefficients_and_standard_errors_are_the_published_ones(string caseName, string fit)
    {
        var curve = Fit(caseName, fit);
        var coefficients = Expected.Of(caseName, fit, "coef").EnumerateObject().ToArray();
        Assert.Equal(coefficients.Select(c => Expected.Column(c.Name)).Order(), curve.Linear!.Coefficients.Select(c => c.Name).Order());
        foreach (var (name, value) in coefficients.Select(c => (c.Name, c.Value.GetDouble())))
        {
            var ours = curve.Coefficient(Expected.Column(name));
            Assert.Equal(value, ours.Estimate!.Value, 1e-8);
            Assert.Equal(1, ours.StandardError!.Value / Expected.Number(caseName, fit, "se", name), 1e-7);
        }
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void Covariances_are_the_published_ones(string caseName, string fit)
    {
        var linear = Fit(caseName, fit).Linear!;
        var names = Expected.Of(caseName, fit, "vcov", "names").EnumerateArray().Select(n => Expected.Column(n.GetString()!)).ToArray();
        var rows = Expected
            .Of(caseName, fit, "vcov", "rows")
            .EnumerateArray()
            .Select(r => r.EnumerateArray().Select(v => v.GetDouble()).ToArray())
            .ToArray();
        var places = names.Select(n => linear.Coefficients.Select(c => c.Name).ToList().IndexOf(n)).ToArray();
        for (var i = 0; i < names.Length; i++)
        for (var j = 0; j < names.Length; j++)
            Assert.Equal(rows[i][j], linear.Covariance[places[i]][places[j]], 1e-7 * Math.Abs(rows[i][j]));
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void Likelihood_and_deviance_are_the_published_ones(string caseName, string fit)
    {
        var curve = Fit(caseName, fit);
        Assert.Equal(Expected.Number(caseName, fit, "loglik_without_binomial_constant"), curve.LogLikelihood, 1e-9);
        if (fit != "one_curve") // there the reference keeps the sexes apart in the saturated model
        {
            Assert.Equal(Expected.Number(caseName, fit, "deviance"), curve.Deviance, 1e-9);
            Assert.Equal(Expected.Number(caseName, fit, "df_residual"), curve.Linear!.DegreesOfFreedom);
        }
    }

    [Fact]
    public void Profile_intervals_are_the_exact_roots()
    {
        Check("bliss", "ml", "profile_95_exact");
        Check("budworm", "common_slope", "profile_95_exact_common_slope");

        static void Check(string caseName, string fit, string key)
        {
            var curve = Fit(caseName, fit);
            foreach (var parameter in Expected.Of(caseName, key).EnumerateObject())
            {
                var interval = curve.Coefficient(Expected.Column(parameter.Name)).Interval;
                Assert.Equal(parameter.Value.GetProperty("lower").GetDouble(), interval.Lower!.Value, 1e-5);
                Assert.Equal(parameter.Value.GetProperty("upper").GetDouble(), interval.Upper!.Value, 1e-5);
            }
        }
    }

    [Fact]
    public void Likelihood_ratios_of_nested_fits_are_the_published_ones()
    {
        var (one, common, varying) = (Fit("budworm", "one_curve"), Fit("budworm", "common_slope"), Fit("budworm", "interaction"));
        Check(LikelihoodRatio.Of(varying, common), "lr_common_vs_interaction");
        Check(LikelihoodRatio.Of(common, one), "lr_one_curve_vs_common");

        static void Check(LikelihoodRatio ours, string key)
        {
            Assert.Equal(Expected.Number("budworm", key, "chisq"), ours.Statistic, 1e-8);
            Assert.Equal(Expected.Number("budworm", key, "df"), ours.DegreesOfFreedom);
            Assert.Equal(Expected.Number("budworm", key, "p"), ours.PValue, 1e-9);
        }
    }

    [Theory]
    [InlineData("complete", "complete.csv")]
    [InlineData("quasi", "quasi.csv")]
    [InlineData("quasi-group", "quasi-group.csv")]
    [InlineData("overlap-control", "overlap-control.csv")]
    public void Bias_reduced_fits_are_those_of_the_penalised_likelihood(string caseName, string file)
    {
        var model = file == "quasi-group.csv" ? PublishedTables.BiasReduced with { Terms = ["photographer"] } : PublishedTables.BiasReduced;
        var curve = model.Fit(PublishedTables.Table("separated", file)).Only;
        var expected = Expected.Of("separated", "cases", caseName, "jeffreys_own");
        Assert.Equal(
            expected.GetProperty("penalised_loglik_without_binomial_constant").GetDouble(),
            curve.Linear!.PenalisedLogLikelihood!.Value,
            1e-9
        );
        Assert.Equal(expected.GetProperty("loglik_at_estimate_without_binomial_constant").GetDouble(), curve.LogLikelihood, 1e-9);
        foreach (var coefficient in expected.GetProperty("coef").EnumerateObject())
        {
            var ours = curve.Coefficient(Expected.Column(coefficient.Name));
            Assert.Equal(coefficient.Value.GetDouble(), ours.Estimate!.Value, 1e-8);
            Assert.Equal(1, ours.StandardError!.Value / expected.GetProperty("se").GetProperty(coefficient.Name).GetDouble(), 1e-7);
            var profile = expected.GetProperty("profile_penalised_95").GetProperty(coefficient.Name);
            Assert.Equal(profile.GetProperty("lower").GetDouble(), ours.Interval.Lower!.Value, 1e-5);
            Assert.Equal(profile.GetProperty("upper").GetDouble(), ours.Interval.Upper!.Value, 1e-5);
        }
    }
}
