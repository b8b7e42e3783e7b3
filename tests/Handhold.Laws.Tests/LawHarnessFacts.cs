using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws.Tests;

/// <summary>Before the law is trusted: it acquits an honest planner and catches a boaster.</summary>
public class LawHarnessFacts
{
    private const int Frames = 5;
    private static readonly ShutterSpeed At = TestDesign.Speeds[3];

    // The chance, averaged over the prior, that five frames bring one keeper. Knowing nothing else, it is calibrated by construction.
    private static readonly double PriorChance = Enumerable
        .Range(0, 40_000)
        .Average(i => World.Draw(KeeperModel.Default, TestDesign.HalfPoint, Seed.From(1).Stream(i)).ChanceOf(1, Frames, At));

    [Fact]
    public void A_planner_that_states_the_prior_chance_is_acquitted() => Assert.True(Judge(boast: 0).Holds(0.005));

    [Fact]
    public void A_planner_that_boasts_by_eight_points_is_caught() => Assert.False(Judge(boast: 0.08).Holds(0.005));

    [Fact]
    public void Declined_plans_are_counted_and_not_judged()
    {
        var margin = Margin.Of(
            "all",
            [
                [new(Plan(0.9), 0.8, 0.7), new(Plan(0.9) with { Frames = null }, 0, null)],
                [new(Plan(0.9), 0.9, 0.5)],
            ],
            _ => true
        );
        Assert.Equal(2, margin.Plans);
        Assert.Equal(
            [1 / 3.0, 0.9, 0.85, 0.6, Math.Sqrt(2) * 0.05 / 2],
            [margin.Declined, margin.Stated, margin.Kept, margin.PlugInKept, margin.Error],
            (a, b) => Math.Abs(a - b) < 1e-12
        );
    }

    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    public void Outcomes_do_not_depend_on_the_number_of_threads(int threads) =>
        Assert.Equal(
            PlansKept.Run(TestDesign.OneBurstOfSix, 0, 200, 2, (_, table) => [Plan(table.Keepers)]).SelectMany(o => o),
            PlansKept.Run(TestDesign.OneBurstOfSix, 0, 200, threads, (_, table) => [Plan(table.Keepers)]).SelectMany(o => o)
        );

    private static Margin Judge(double boast) =>
        Margin.Of("all", PlansKept.Run(TestDesign.OneBurstOfSix, 0, 4000, 2, (_, _) => [Plan(PriorChance + boast)]), _ => true);

    private static Plan Plan(double stated) => new("fixed", At, 1, 0.9, null, Frames, stated, null);
}
