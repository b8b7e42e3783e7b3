namespace Handhold.Laws.Tests;

/// <summary>The short form of the experiment; the full form is the program laws/Handhold.Laws.</summary>
public class PromisesLaw
{
    private const int Worlds = 80;

    public static TheoryData<int> Experiments => [.. Enumerable.Range(0, Experiment.All.Length)];

    [Theory]
    [MemberData(nameof(Experiments))]
    public void Promises_are_kept(int experiment)
    {
        var outcomes = Experiment.All[experiment].Run(Worlds, threads: 2);
        Assert.Equal(Worlds, outcomes.Count);
        Assert.Empty(ExperimentReport.Broken(Experiment.All[experiment], outcomes));
    }

    [Fact]
    public void Plans_by_an_estimator_that_knows_no_doubt_break_the_bars()
    {
        var outcomes = (Experiment.All[0] with { Estimator = Estimator.BiasReduced }).Run(300, threads: 2);
        Assert.NotEmpty(ExperimentReport.Broken(Experiment.All[0], outcomes));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Honesty_costs_at_most_a_tenth_more_frames_than_an_oracle(int economy)
    {
        var costs = Economy.All[economy].Run(Worlds, threads: 2);
        Assert.Empty(ExperimentReport.Broken(Economy.All[economy], costs));
        Assert.True(costs.Count(c => c.Error < 0.1) >= 2, "Compared at two kept shares at least, and not by chance.");
    }
}
