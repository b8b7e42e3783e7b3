namespace Handhold.Laws.Tests;

/// <summary>The short form of the law on effects in stops; the full form is the program laws/Handhold.Laws.</summary>
public class EffectsLaw
{
    private const int Worlds = 80;

    [Theory]
    [InlineData(0, 3)]
    [InlineData(1, 3)]
    public void Intervals_of_effects_contain_them_as_often_as_they_say(int test, int effects)
    {
        var covered = EffectsInStops.Covered(test, first: 0, Worlds, threads: 2);
        Assert.Equal(effects, covered.Count);
        Assert.All(covered, effect => Assert.Equal(Worlds, effect.Value.Length));
        Assert.All(covered, effect => Assert.True(EffectsInStopsReport.Holds(effect.Value), effect.Key));
    }
}
