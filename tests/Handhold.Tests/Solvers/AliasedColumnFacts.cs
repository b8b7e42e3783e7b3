using Handhold.Solvers;

namespace Handhold.Tests.Solvers;

public class AliasedColumnFacts
{
    [Fact]
    public void A_column_twice_is_a_multiple_of_the_first() =>
        Assert.Equal("Column 'twice' is a multiple of 'x'.", Only(("x", x => x), ("twice", x => 2 * x)));

    [Fact]
    public void Levels_that_sum_to_the_intercept_are_named() =>
        Assert.Equal(
            "Column 'odd' is a sum of multiples of 'intercept', 'even'.",
            Only(("even", x => x % 2 == 0 ? 1 : 0), ("odd", x => x % 2 == 0 ? 0 : 1))
        );

    [Fact]
    public void A_column_of_zeros_is_named() => Assert.Equal("Column 'nothing' is zero on every row.", Only(("nothing", _ => 0)));

    [Fact]
    public void Columns_alike_to_a_millionth_are_told_apart() =>
        Assert.Empty(AliasedColumn.In(Problem(("x", x => x), ("nearly", x => x + (x % 2) / 1e6))));

    [Fact]
    public void Units_and_origins_alias_nothing() =>
        Assert.Empty(AliasedColumn.In(Problem(("tiny", x => 1e-9 * x), ("far", x => 1e6 + x % 3), ("huge", x => 1e12 * (x % 2)))));

    [Theory]
    [InlineData(BinomialEstimator.Likelihood)]
    [InlineData(BinomialEstimator.BiasReduced)]
    public void A_fit_of_aliased_columns_is_refused_naming_them(BinomialEstimator estimator)
    {
        var problem = Problem(("x", x => x), ("twice", x => 2 * x));
        var refused = Assert.Throws<AliasedColumnsException>(() =>
            estimator == BinomialEstimator.Likelihood ? BinomialSolver.Likelihood(problem) : BinomialSolver.BiasReduced(problem)
        );
        Assert.Contains("'twice'", refused.Message, StringComparison.Ordinal);
    }

    private static string Only(params (string Name, Func<int, double> Of)[] columns) =>
        Assert.Single(AliasedColumn.In(Problem(columns))).ToString();

    private static BinomialProblem Problem(params (string Name, Func<int, double> Of)[] columns) =>
        new(
            ["intercept", .. columns.Select(c => c.Name)],
            Enumerable.Range(0, 8).SelectMany(i => columns.Select(c => c.Of(i)).Prepend(1)).ToArray(),
            (int[])[3, 3, 3, 3, 3, 3, 3, 3],
            (int[])[3, 3, 2, 3, 1, 1, 0, 1]
        );
}
