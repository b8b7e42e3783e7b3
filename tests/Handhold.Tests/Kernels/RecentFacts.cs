using Handhold.Kernels;

namespace Handhold.Tests.Kernels;

/// <summary>What is remembered of what was computed.</summary>
public class RecentFacts
{
    [Fact]
    public void The_last_keys_are_computed_once_and_older_ones_anew()
    {
        List<int> computed = [];
        Recent<int, int> squares = new(2, Square);
        foreach (var key in new[] { 1, 2, 1, 2, 3, 2, 3, 1 })
            Assert.Equal(key * key, squares[key]);
        Assert.Equal([1, 2, 3, 1], computed);

        int Square(int key)
        {
            computed.Add(key);
            return key * key;
        }
    }

    [Fact]
    public void Many_threads_find_one_value()
    {
        Recent<int, object> values = new(4, _ => new());
        var found = new object[64];
        Parallel.For(0, found.Length, i => found[i] = values[i % 4]);
        Assert.Equal(4, found.Distinct().Count());
    }
}
