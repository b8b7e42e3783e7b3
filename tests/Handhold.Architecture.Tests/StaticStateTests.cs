namespace Handhold.Architecture.Tests;

public class StaticStateTests
{
    [Fact]
    public void Nothing_static_can_change() => Assert.Empty(StaticState.Mutable(House.Shipped.SelectMany(a => a.GetTypes())));

    [Theory]
    [InlineData("static int s_count;")]
    [InlineData("static int Count { get; set; }")]
    [InlineData("static readonly double[] s_nodes = [1, 2];")]
    [InlineData("static readonly List<int> s_seen = [];")]
    [InlineData("static readonly System.Collections.Immutable.ImmutableArray<int[]> s_nodes = [];")]
    [InlineData("static readonly Counter s_calls = new(); sealed class Counter { int _count; public int Next() => ++_count; }")]
    [InlineData("static readonly Memory<int> s_nodes = new int[3];")]
    [InlineData("static readonly System.Globalization.CultureInfo s_culture = new(\"de-DE\");")]
    [InlineData("static readonly Open s_open = new(); class Open { }")]
    public void Static_state_that_can_change_is_seen(string bad) =>
        Assert.Single(StaticState.Mutable(House.Load($"class A {{ {bad} }}").GetTypes()));

    [Theory]
    [InlineData("const int One = 1;")]
    [InlineData("static readonly System.Collections.Immutable.ImmutableArray<double> s_nodes = [1, 2];")]
    [InlineData("static readonly Func<int, int> s_next = n => n + 1; static int F(Func<int, int> f) => f(1); static int G() => F(n => n);")]
    [InlineData(
        "delegate int Step(int n); sealed record Named(string Name, Step Step); static readonly (string, Named)? s_pair = (\"a\", new(\"b\", n => n));"
    )]
    [InlineData("static ReadOnlySpan<double> Nodes => [1, 2, 3];")]
    [InlineData("static Handhold.Priors Believed { get; } = Handhold.Priors.Default; static readonly double? s_known = 1;")]
    public void Constants_tables_and_unchanging_objects_pass(string good) =>
        Assert.Empty(StaticState.Mutable(House.Load($"class A {{ {good} }}").GetTypes()));
}
