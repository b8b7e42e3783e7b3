using Handhold.Kernels;

namespace Handhold.Tests.Kernels;

public class SpecialFunctionTests
{
    // Largest error relative to the 60-digit value, or absolute where that value is 0.
    private static void Agrees(string function, double tolerance, Func<double, double, double, double> ours)
    {
        var rows = GoldenFolder.Rows("special-functions", "values.csv").Where(row => row["function"] == function).ToList();
        Assert.NotEmpty(rows);
        foreach (var row in rows)
        {
            var (a, b, c) = (row.Number("a"), Optional(row, "b"), Optional(row, "c"));
            var (expected, got) = (row.Number("value"), ours(a, b, c));
            var error = Math.Abs(got - expected) / (expected == 0 ? 1 : Math.Abs(expected));
            Assert.True(
                error <= tolerance,
                FormattableString.Invariant($"{function}({a:R}, {b:R}, {c:R}) is {expected:R}, got {got:R}: error {error:E2}.")
            );
        }
    }

    private static double Optional(IReadOnlyDictionary<string, string> row, string column) =>
        row[column].Length == 0 ? 0 : row.Number(column);

    [Fact]
    public void Log1p_and_expm1_keep_all_digits_of_small_arguments()
    {
        Agrees("log1p", 5e-16, (x, _, _) => Elementary.Log1p(x));
        Agrees("expm1", 6e-16, (x, _, _) => Elementary.Expm1(x));
    }

    [Fact]
    public void Log1p_and_expm1_meet_their_limits()
    {
        Assert.Equal(double.NegativeInfinity, Elementary.Log1p(-1));
        Assert.Equal(double.PositiveInfinity, Elementary.Log1p(double.PositiveInfinity));
        Assert.True(double.IsNaN(Elementary.Log1p(-1.5)));
        Assert.Equal(-1, Elementary.Expm1(double.NegativeInfinity));
        Assert.Equal(double.PositiveInfinity, Elementary.Expm1(double.PositiveInfinity));
    }

    [Fact]
    public void Softplus_is_right_in_both_tails()
    {
        Agrees("softplus", 5e-16, (x, _, _) => Elementary.Softplus(x));
        Agrees("loglogistic", 5e-16, (x, _, _) => Elementary.LogLogistic(x));
        Assert.Equal(800, Elementary.Softplus(800));
        Assert.Equal(0, Elementary.Softplus(-800));
        Assert.Equal(-800, Elementary.LogLogistic(-800));
    }

    [Fact]
    public void Logistic_keeps_both_tails()
    {
        Agrees("logistic", 5e-16, (x, _, _) => Elementary.Logistic(x).Mu);
        Agrees("logistic", 5e-16, (x, _, _) => Elementary.Logistic(-x).OneMinusMu);
        Assert.True(Elementary.Logistic(700).OneMinusMu > 0);
        Assert.Equal((1, 0), Elementary.Logistic(800));
    }

    [Fact]
    public void Logit_is_right_near_a_half_and_in_the_tails()
    {
        Agrees("logit", 5e-16, (p, _, _) => Elementary.Logit(p));
        Assert.Equal(0, Elementary.Logit(0.5));
        Assert.Equal(double.NegativeInfinity, Elementary.Logit(0));
        Assert.Equal(double.PositiveInfinity, Elementary.Logit(1));
    }

    [Fact]
    public void Normal_distribution_is_right_in_both_tails()
    {
        Agrees("normalcdf", 1e-15, (x, _, _) => Normal.Cdf(x));
        Agrees("normaldensity", 1e-15, (x, _, _) => Normal.Density(x));
        Assert.Equal((0, 1), (Normal.Cdf(double.NegativeInfinity), Normal.Cdf(double.PositiveInfinity)));
        Assert.Equal(0, Normal.Density(double.PositiveInfinity));
    }

    [Fact]
    public void Normal_quantile_is_right_in_both_tails()
    {
        Agrees("normalquantile", 1e-15, (p, _, _) => Normal.Quantile(p));
        Assert.Equal(0, Normal.Quantile(0.5));
        Assert.Equal(double.NegativeInfinity, Normal.Quantile(0));
        Assert.Equal(double.PositiveInfinity, Normal.Quantile(1));
        Assert.True(double.IsNaN(Normal.Quantile(1.5)));
    }
}
