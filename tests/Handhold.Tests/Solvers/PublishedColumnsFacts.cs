using Handhold.Solvers;
using static Handhold.Tests.Solvers.Problems;

namespace Handhold.Tests.Solvers;

public class PublishedColumnsFacts
{
    private static readonly BinomialProblem Constriction = Table(
        "vaso-constriction",
        "table.csv",
        ("logVolume", row => Math.Log(row.Number("volume"))),
        ("logRate", row => Math.Log(row.Number("rate")))
    );

    private static readonly BinomialProblem BirthWeight = Table(
        "birth-weight",
        "table.csv",
        ("age", row => row.Number("age")),
        ("lwt", row => row.Number("lwt")),
        ("race2", Is("race", "2")),
        ("race3", Is("race", "3")),
        ("ftv", row => row.Number("ftv"))
    );

    private static readonly BinomialProblem Endometrial = Table(
        "endometrial",
        "table.csv",
        ("NV", row => row.Number("NV")),
        ("PI", row => row.Number("PI")),
        ("EH", row => row.Number("EH"))
    );

    [Fact]
    public void Constriction_of_vessels_by_volume_and_rate()
    {
        PublishedFitFacts.Agrees(Expected("vaso-constriction", "ml"), BinomialSolver.Likelihood(Constriction), Constriction);
        PublishedFitFacts.Profiled(Expected("vaso-constriction", "profile_95_exact"), Constriction);
        PublishedFitFacts.Penalised(Expected("vaso-constriction", "jeffreys_own"), Constriction);
    }

    [Fact]
    public void Birth_weight_by_covariates_and_levels()
    {
        PublishedFitFacts.Agrees(Expected("birth-weight", "ml"), BinomialSolver.Likelihood(BirthWeight), BirthWeight);
        PublishedFitFacts.Profiled(Expected("birth-weight", "profile_95_exact"), BirthWeight);
    }

    [Fact]
    public void Tumours_that_one_column_separates()
    {
        PublishedFitFacts.Penalised(Expected("endometrial", "jeffreys_own"), Endometrial);
        var verdict = Separation.Of(Endometrial);
        Assert.Equal([("NV", 1)], verdict.Columns.Select(c => (c.Name, c.Sign)));
        var (limit, expected) = (BinomialSolver.Limit(Endometrial), Expected("endometrial", "ml_limits"));
        Assert.Null(limit.Coefficients[1]);
        foreach (var (column, name) in ((int, string)[])[(0, "(Intercept)"), (2, "PI"), (3, "EH")])
        {
            Assert.Equal(expected.At("coef", name), limit.Coefficients[column]!.Value, 1e-8);
            Near(expected.At("se", name), limit.StandardErrors[column]!.Value, 1e-7);
        }
        Assert.Equal(expected.At("deviance"), limit.Deviance, 1e-9);
    }
}
