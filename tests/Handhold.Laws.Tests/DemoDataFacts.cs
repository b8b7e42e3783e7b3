using DemoData;

namespace Handhold.Laws.Tests;

public class DemoDataFacts
{
    [Fact]
    public void The_committed_demo_table_is_what_its_program_writes() =>
        Assert.Equal(ClockMuseum.Csv(), File.ReadAllText(Repository.Path("shared", "demo", "clock-museum.csv")));
}
