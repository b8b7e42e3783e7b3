using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>Single frames, one to five a level, against published data and two other programs.</summary>
public class ChildrenFacts
{
    [Theory]
    [InlineData("lme4_laplace", 1)]
    [InlineData("lme4_9", 9)]
    [InlineData("lme4_25", 25)]
    [InlineData("glmmTMB_laplace", 1)]
    public void The_fit_is_that_of_another_program(string program, int nodes)
    {
        var (fit, expected) = (Fit(nodes), Expected.Of("grouped-bacteria", program));
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
    [InlineData("lme4_laplace", 1)]
    [InlineData("lme4_25", 25)]
    public void Modes_and_their_sds_are_those_of_another_program(string program, int nodes)
    {
        var expected = Expected.Of("grouped-bacteria", program);
        foreach (var level in Fit(nodes).Groups.Single().Levels)
        {
            Assert.Equal(expected.GetProperty("modes").GetProperty(level.Label).GetDouble(), level.Effects[0].Mode, 1e-3);
            Assert.Equal(expected.GetProperty("modeSds").GetProperty(level.Label).GetDouble(), level.Effects[0].StandardDeviation, 1e-3);
        }
    }

    [Fact]
    public void As_many_nodes_are_taken_as_the_log_likelihood_needs() =>
        Assert.Equal(Fit(100).LogLikelihood, Fit(null).LogLikelihood, 1e-8);

    private static LinearFit Fit(int? nodes) =>
        (PublishedTables.Likelihood with { Terms = ["trt"], Varies = [new("photographer")], Nodes = nodes })
            .Fit(PublishedTables.Table("grouped-bacteria", "cells.csv"))
            .Only.Linear!;
}
