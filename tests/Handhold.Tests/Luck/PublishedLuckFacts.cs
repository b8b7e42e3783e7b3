using System.Text.Json;
using Handhold.Tests.Estimators;

namespace Handhold.Tests.Luck;

public class PublishedLuckFacts
{
    private const string Case = "burst-luck";

    [Theory]
    [InlineData("seeds", "lme4_laplace", 1)]
    [InlineData("seeds", "glmmTMB_laplace", 1)]
    [InlineData("seeds", "lme4_9", 9)]
    [InlineData("seeds", "lme4_25", 25)]
    [InlineData("seeds", "lme4_100", null)]
    [InlineData("litters", "lme4_laplace", 1)]
    [InlineData("litters", "glmmTMB_laplace", 1)]
    [InlineData("litters", "lme4_9", 9)]
    [InlineData("litters", "lme4_25", 25)]
    [InlineData("litters", "lme4_100", null)]
    public void Normal_luck_is_that_of_two_other_programs_at_any_number_of_nodes(string table, string program, int? nodes)
    {
        var fit = LuckTables.Fit(table, LuckTables.Normal with { Nodes = nodes }).Linear!;
        var expected = Expected.Of(Case, table, program);
        Agree(expected, fit);
        Assert.Equal(expected.GetProperty("sd").GetDouble(), fit.Luck!.Estimate!.Value, 1e-5);
    }

    [Theory]
    [InlineData("seeds", "glmmTMB_beta")]
    [InlineData("seeds", "VGAM_beta")]
    [InlineData("litters", "glmmTMB_beta")]
    [InlineData("litters", "VGAM_beta")]
    public void Beta_binomial_fits_are_those_of_two_other_programs(string table, string program)
    {
        var fit = LuckTables.Fit(table, LuckTables.Beta).Linear!;
        var expected = Expected.Of(Case, table, program);
        Agree(expected, fit);
        Assert.Equal(expected.GetProperty("rho").GetDouble(), fit.Luck!.Estimate!.Value, 1e-6);
        if (expected.TryGetProperty("se", out var errors))
            foreach (var error in errors.EnumerateObject())
                Assert.Equal(1, Of(fit, error.Name).StandardError!.Value / error.Value.GetDouble(), 1e-4);
    }

    [Theory]
    [InlineData("herds", "factor", 1)]
    [InlineData("herds", "factor", 9)]
    [InlineData("herds", "factor", 25)]
    [InlineData("numeric", "numeric", 1)]
    [InlineData("numeric", "numeric", 9)]
    [InlineData("numeric", "numeric", 25)]
    public void Bursts_over_several_conditions_are_fitted_as_published(string table, string fits, int nodes)
    {
        var fit = LuckTables.Fit(table, LuckTables.Normal with { Nodes = nodes }).Linear!;
        var expected = Expected.Of("cbpp", "fits", fits, $"nAGQ{nodes}");
        foreach (var coefficient in expected.GetProperty("beta").EnumerateObject())
            Assert.Equal(coefficient.Value.GetDouble(), Of(fit, coefficient.Name).Estimate!.Value, 1e-5);
        Assert.Equal(expected.GetProperty("sigma_herd").GetDouble(), fit.Luck!.Estimate!.Value, 1e-5);
        Assert.Equal(expected.GetProperty("loglik_without_binomial_constant").GetDouble(), fit.LogLikelihood, 1e-7);
        if (nodes > 1)
            foreach (var error in expected.GetProperty("se_beta").EnumerateObject())
                Assert.Equal(1, Of(fit, error.Name).StandardError!.Value / error.Value.GetDouble(), 1e-5);
    }

    [Theory]
    [InlineData("seeds")]
    [InlineData("litters")]
    [InlineData("herds")]
    [InlineData("numeric")]
    public void As_many_nodes_are_taken_as_the_log_likelihood_needs(string table)
    {
        var settled = LuckTables.Fit(table, LuckTables.Normal).Linear!;
        var most = LuckTables.Fit(table, LuckTables.Normal with { Nodes = 200 }).Linear!;
        Assert.Equal(most.LogLikelihood, settled.LogLikelihood, 1e-8);
        Assert.Equal(most.Luck!.Estimate!.Value, settled.Luck!.Estimate!.Value, 1e-7);
    }

    private static void Agree(JsonElement expected, LinearFit fit)
    {
        foreach (var coefficient in expected.GetProperty("beta").EnumerateObject())
            Assert.Equal(coefficient.Value.GetDouble(), Of(fit, coefficient.Name).Estimate!.Value, 3e-5);
        Assert.Equal(expected.GetProperty("logLikelihood").GetDouble(), fit.LogLikelihood, 1e-8);
    }

    /// <summary>Our column for theirs: <c>seedaegyptiaca75:extractcucumber</c>, <c>period2</c>.</summary>
    private static Coefficient Of(LinearFit fit, string theirs) =>
        theirs.StartsWith("(Intercept)", StringComparison.Ordinal) ? fit.Coefficients[0]
        : theirs == "x" ? fit.Coefficients[1]
        : fit.Coefficients.Single(c =>
            c.Name.Replace("period=t", "period", StringComparison.Ordinal).Replace("=", "", StringComparison.Ordinal).Replace('×', ':')
            == theirs
        );
}
