using System.Text.Json;
using Handhold.Solvers;
using static Handhold.Tests.Solvers.Problems;

namespace Handhold.Tests.Solvers;

public class PublishedFitFacts
{
    private static readonly BinomialProblem Bliss = Table("bliss", "table.csv", ("x", Log2Exposure));
    private static readonly BinomialProblem Budworm = Table("budworm", "table.csv", ("sexM", Is("sex", "M")), ("x", Log2Exposure));

    private static readonly BinomialProblem Interaction = Table(
        "budworm",
        "table.csv",
        ("sexM", Is("sex", "M")),
        ("x", Log2Exposure),
        ("sexM:x", row => row["sex"] == "M" ? Log2Exposure(row) : 0)
    );

    [Fact]
    public void Beetles_of_Bliss_1935() => Agrees(Expected("bliss", "ml"), BinomialSolver.Likelihood(Bliss), Bliss);

    [Fact]
    public void Budworms_with_a_common_slope() => Agrees(Expected("budworm", "common_slope"), BinomialSolver.Likelihood(Budworm), Budworm);

    [Fact]
    public void Budworms_with_a_slope_for_each_sex() =>
        Agrees(Expected("budworm", "interaction"), BinomialSolver.Likelihood(Interaction), Interaction);

    [Theory]
    [InlineData("complete")]
    [InlineData("quasi")]
    [InlineData("quasi-group")]
    [InlineData("overlap-control")]
    public void Penalised_fits_of_separated_tables(string table)
    {
        Penalised(Expected("separated", "cases", table, "jeffreys_own"), Separated(table));
    }

    internal static void Penalised(JsonElement expected, BinomialProblem problem)
    {
        var fit = BinomialSolver.BiasReduced(problem);
        for (var j = 0; j < problem.Columns.Length; j++)
        {
            Assert.Equal(expected.At("coef", problem.Columns[j]), fit.Coefficients[j], 1e-8);
            Near(expected.At("se", problem.Columns[j]), fit.StandardError(j), 1e-7);
            var profile = ProfileInterval.Of(problem, BinomialEstimator.BiasReduced, problem.Unit(j));
            Assert.Equal(expected.At("profile_penalised_95", problem.Columns[j], "lower"), profile.Lower!.Value, 1e-5);
            Assert.Equal(expected.At("profile_penalised_95", problem.Columns[j], "upper"), profile.Upper!.Value, 1e-5);
        }
        Assert.Equal(expected.At("penalised_loglik_without_binomial_constant"), fit.PenalisedLogLikelihood!.Value, 1e-9);
        Assert.Equal(expected.At("loglik_at_estimate_without_binomial_constant"), fit.LogLikelihood, 1e-9);
    }

    [Fact]
    public void One_photographer_who_keeps_all_leaves_the_others_line_finite()
    {
        var limit = BinomialSolver.Limit(Separated("quasi-group"));
        var expected = Expected("separated", "cases", "quasi-group", "ml_limits");
        Assert.Equal(expected.At("coef_ann_alone", "(Intercept)"), limit.Coefficients[0]!.Value, 1e-8);
        Assert.Null(limit.Coefficients[1]);
        Assert.Equal(expected.At("coef_ann_alone", "x"), limit.Coefficients[2]!.Value, 1e-8);
        Near(expected.At("se", "(Intercept)"), limit.StandardErrors[0]!.Value, 1e-7);
        Near(expected.At("se", "x"), limit.StandardErrors[2]!.Value, 1e-7);
        Assert.Equal(expected.At("deviance"), limit.Deviance, 1e-9);
    }

    [Fact]
    public void Profile_limits_are_the_exact_roots()
    {
        Profiled(Expected("bliss", "profile_95_exact"), Bliss);
        Profiled(Expected("budworm", "profile_95_exact_common_slope"), Budworm);
    }

    [Theory]
    [InlineData("x50", 0.5)]
    [InlineData("x90", 0.9)]
    public void Profile_limits_of_a_dose(string name, double rate)
    {
        var expected = Expected("bliss", "profile_95_doses", name);
        var set = ProfileSet.Of(Bliss, BinomialEstimator.Likelihood, [1, 0], [0, 1], Math.Log(rate / (1 - rate)));
        Assert.False(set.Outside);
        Assert.Equal(expected.At("lower"), set.Lower!.Value, 1e-8);
        Assert.Equal(expected.At("upper"), set.Upper!.Value, 1e-8);
    }

    private static BinomialProblem Separated(string table) =>
        table == "quasi-group"
            ? Table("separated", $"{table}.csv", ("photographerbob", Is("photographer", "bob")), ("x", Log2Exposure))
            : Table("separated", $"{table}.csv", ("x", Log2Exposure));

    internal static void Profiled(JsonElement expected, BinomialProblem problem)
    {
        for (var j = 0; j < problem.Columns.Length; j++)
        {
            var profile = ProfileInterval.Of(problem, BinomialEstimator.Likelihood, problem.Unit(j));
            Assert.Equal(expected.At(problem.Columns[j], "lower"), profile.Lower!.Value, 1e-7);
            Assert.Equal(expected.At(problem.Columns[j], "upper"), profile.Upper!.Value, 1e-7);
        }
    }

    internal static void Agrees(JsonElement expected, BinomialEstimate fit, BinomialProblem problem)
    {
        for (var j = 0; j < problem.Columns.Length; j++)
        {
            Assert.Equal(expected.At("coef", problem.Columns[j]), fit.Coefficients[j], 1e-8);
            Near(expected.At("se", problem.Columns[j]), fit.StandardError(j), 1e-7);
        }
        Assert.Equal(expected.At("deviance"), fit.Deviance, 1e-9);
        Assert.Equal(expected.At("loglik_without_binomial_constant"), fit.LogLikelihood, 1e-9);
    }
}
