using System.Globalization;
using System.Text.Json;
using Handhold.Solvers;
using static Handhold.Tests.Solvers.Problems;

namespace Handhold.Tests.Solvers;

public class FiftyDigitFacts
{
    [Theory]
    [InlineData(Link.Logit, "logit")]
    [InlineData(Link.Probit, "probit")]
    [InlineData(Link.Cloglog, "cloglog")]
    public void Beetles_with_each_link(Link link, string name)
    {
        var (expected, fit) = (
            Expected("fifty-digits", name),
            BinomialSolver.Likelihood(Table("bliss", "table.csv", ("x", Log2Exposure)) with { Link = link })
        );
        Agrees(expected, fit, 1e-12);
        Near(Of(expected, "loglik"), fit.LogLikelihood, 1e-14);
    }

    [Fact]
    public void A_separated_table_penalised()
    {
        var (expected, fit) = (
            Expected("fifty-digits", "separated-penalised"),
            BinomialSolver.BiasReduced(Table("separated", "complete.csv", ("x", Log2Exposure)))
        );
        Agrees(expected, fit, 1e-12);
        Near(Of(expected, "penalised-loglik"), fit.PenalisedLogLikelihood!.Value, 1e-14);
    }

    [Fact]
    public void A_drug_test_with_a_natural_response()
    {
        var (expected, fit) = (Expected("natural-response"), BinomialSolver.Likelihood(Drug with { Floor = null }));
        Agrees(expected, fit, 1e-9);
        Near(Of(expected, "coef", "floor"), fit.Floor, 1e-9);
        Near(Of(expected, "se", "floor"), fit.FloorStandardError!.Value, 1e-8);
        Assert.Equal(Of(expected, "loglik"), fit.LogLikelihood, 1e-11);
    }

    [Fact]
    public void Its_survivors_have_a_natural_ceiling()
    {
        BinomialProblem survivors = new(
            Drug.Columns,
            Drug.Design,
            Drug.Frames,
            Drug.Frames.ToArray().Zip(Drug.Keepers.ToArray(), (n, k) => n - k).ToArray()
        )
        {
            Link = Link.Probit,
            Offset = Drug.Offset.ToArray().Select(o => -o).ToArray(),
            Ceiling = null,
        };
        var (expected, fit) = (Expected("natural-response"), BinomialSolver.Likelihood(survivors));
        Near(1 - Of(expected, "coef", "floor"), fit.Ceiling, 1e-9);
        Near(Of(expected, "se", "floor"), fit.CeilingStandardError!.Value, 1e-8);
        Near(-Of(expected, "coef", "log10dose"), fit.Coefficients[1], 1e-9);
    }

    // The control is infinitely far down the curve, whatever its slope.
    private static BinomialProblem Drug
    {
        get
        {
            var rows = GoldenFolder.Rows("natural-response", "table.csv");
            double[] doses = [.. rows.Select(row => row.Number("dose"))];
            return new(
                ["(Intercept)", "log10dose"],
                doses.SelectMany(d => d == 0 ? new[] { 0.0, 0 } : [1, Math.Log10(d)]).ToArray(),
                rows.Select(row => (int)row.Number("frames")).ToArray(),
                rows.Select(row => (int)row.Number("keepers")).ToArray()
            )
            {
                Link = Link.Probit,
                Offset = doses.Select(d => d == 0 ? -1e4 : 0).ToArray(),
            };
        }
    }

    private static void Agrees(JsonElement expected, BinomialEstimate fit, double relative)
    {
        foreach (var (column, coefficient) in expected.GetProperty("coef").EnumerateObject().Take(2).Index())
        {
            Near(Of(coefficient.Value), fit.Coefficients[column], relative);
            Near(Of(expected, "se", coefficient.Name), fit.StandardError(column), 10 * relative);
        }
    }

    private static double Of(JsonElement element, params string[] path) =>
        double.Parse(path.Aggregate(element, (inner, name) => inner.GetProperty(name)).GetString()!, CultureInfo.InvariantCulture);
}
