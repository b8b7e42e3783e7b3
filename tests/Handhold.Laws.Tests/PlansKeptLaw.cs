using System.Collections.Immutable;
using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws.Tests;

/// <summary>The short form of the laws; the full form is the program laws/Handhold.Laws.</summary>
public class PlansKeptLaw
{
    private static readonly ImmutableArray<IReadOnlyList<Outcome>> Worlds = PlansKept.Run(
        TestDesign.TwoBurstsOfThree,
        first: 0,
        worlds: 200,
        threads: 2,
        Planning.AfterTest
    );

    [Fact]
    public void Plans_for_another_day_are_kept_as_often_as_they_state() =>
        Assert.All(PlansKeptReport.Margins(Worlds), margin => Assert.True(margin.Holds(0.015), margin.ToString()));

    [Fact]
    public void The_laws_plans_are_those_of_the_public_question()
    {
        foreach (var world in new[] { 1, 2, 61 })
        {
            var stream = Seed.From(5).Stream(world);
            var table = World.Draw(KeeperModel.Default, TestDesign.HalfPoint, stream).Shoot(TestDesign.TwoBurstsOfThree.Shoot, stream);
            var curve = TestDesign.Model.Fit(table).Only;
            foreach (var plan in Planning.AfterTest(world, table).Where(p => p.At is not null))
            {
                var answer = curve.FramesNeeded(plan.At!.Value, plan.Keepers, plan.Assurance, Planning.Options(world));
                Assert.Equal((plan.Frames, plan.Stated), (answer.Frames, answer.Assurance));
            }
        }
    }
}
