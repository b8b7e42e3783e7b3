using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>A row a level, half of them all or nothing, against published data and two other programs.</summary>
public class LitterFacts
{
    [Theory]
    [InlineData("line", "lme4_laplace", 1)]
    [InlineData("line", "lme4_9", 9)]
    [InlineData("line", "lme4_25", 25)]
    [InlineData("line", "glmmTMB_laplace", 1)]
    [InlineData("groups", "lme4_laplace", 1)]
    [InlineData("groups", "lme4_9", 9)]
    [InlineData("groups", "lme4_25", 25)]
    [InlineData("groups", "glmmTMB_laplace", 1)]
    public void The_fit_is_that_of_another_program(string model, string program, int nodes)
    {
        var (fit, expected) = (Fit(model, nodes), Expected.Of("grouped-litters", model, program));
        Assert.Equal(expected.GetProperty("logLikelihood").GetDouble(), fit.LogLikelihood, 1e-5);
        foreach (var coefficient in fit.Coefficients)
        {
            var theirs = coefficient.Name switch
            {
                "intercept" => "(Intercept)",
                "log2Exposure" => "x",
                var name => name.Replace("=", "", StringComparison.Ordinal),
            };
            Assert.Equal(expected.GetProperty("beta").GetProperty(theirs).GetDouble(), coefficient.Estimate!.Value, 1e-3);
            Assert.Equal(1, coefficient.StandardError!.Value / expected.GetProperty("se").GetProperty(theirs).GetDouble(), 1e-3);
        }

        Assert.Equal(expected.GetProperty("sd").GetDouble(), fit.Groups.Single().Spreads.Single().Estimate!.Value, 1e-3);
    }

    [Theory]
    [InlineData("line", "lme4_laplace", 1)]
    [InlineData("groups", "lme4_25", 25)]
    public void Modes_and_their_sds_are_those_of_another_program(string model, string program, int nodes)
    {
        var expected = Expected.Of("grouped-litters", model, program);
        foreach (var level in Fit(model, nodes).Groups.Single().Levels)
        {
            Assert.Equal(expected.GetProperty("modes").GetProperty(level.Label).GetDouble(), level.Effects[0].Mode, 1e-3);
            Assert.Equal(expected.GetProperty("modeSds").GetProperty(level.Label).GetDouble(), level.Effects[0].StandardDeviation, 1e-3);
        }
    }

    private static LinearFit Fit(string model, int nodes) =>
        (PublishedTables.Likelihood with { Terms = model == "groups" ? ["group"] : [], Varies = [new("photographer")], Nodes = nodes })
            .Fit(PublishedTables.Table("grouped-litters", "cells.csv"))
            .Only.Linear!;
}
