namespace Handhold.Laws.Tests;

/// <summary>The short form of the law on alarms of levels that vary; the full form is the program laws/Handhold.Laws.</summary>
public class PooledAlarmsLaw
{
    private const int Threads = 2;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Levels_that_obey_the_model_raise_no_alarm(int structure) => Assert.Empty(PooledAlarms.Count(structure, 100, Threads));
}
