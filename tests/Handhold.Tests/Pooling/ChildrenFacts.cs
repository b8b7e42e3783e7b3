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
    public void The_fit_is_that_of_another_program(string program, int nodes) =>
        OtherProgram.Agrees(Expected.Of("grouped-bacteria", program), Fit(nodes));

    [Theory]
    [InlineData("lme4_laplace", 1)]
    [InlineData("lme4_25", 25)]
    public void Modes_and_their_sds_are_those_of_another_program(string program, int nodes) =>
        OtherProgram.AgreesOnModes(Expected.Of("grouped-bacteria", program), Fit(nodes));

    [Fact]
    public void As_many_nodes_are_taken_as_the_log_likelihood_needs() =>
        Assert.Equal(Fit(100).LogLikelihood, Fit(null).LogLikelihood, 1e-8);

    private static LinearFit Fit(int? nodes) =>
        (PublishedTables.Likelihood with { Terms = ["trt"], Varies = [new("photographer")], Nodes = nodes })
            .Fit(PublishedTables.Table("grouped-bacteria", "cells.csv"))
            .Only.Linear!;
}
