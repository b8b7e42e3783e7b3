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
    public void The_fit_is_that_of_another_program(string model, string program, int nodes) =>
        OtherProgram.Agrees(Expected.Of("grouped-litters", model, program), Fit(model, nodes));

    [Theory]
    [InlineData("line", "lme4_laplace", 1)]
    [InlineData("groups", "lme4_25", 25)]
    public void Modes_and_their_sds_are_those_of_another_program(string model, string program, int nodes) =>
        OtherProgram.AgreesOnModes(Expected.Of("grouped-litters", model, program), Fit(model, nodes));

    private static LinearFit Fit(string model, int nodes) =>
        (PublishedTables.Likelihood with { Terms = model == "groups" ? ["group"] : [], Varies = [new("photographer")], Nodes = nodes })
            .Fit(PublishedTables.Table("grouped-litters", "cells.csv"))
            .Only.Linear!;
}
