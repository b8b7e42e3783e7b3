using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>One varying intercept against published herds, by Laplace's method and by quadrature.</summary>
public class HerdFacts
{
    public static TheoryData<string, int> Cases { get; } =
        new()
        {
            { "factor", 1 },
            { "factor", 9 },
            { "factor", 25 },
            { "numeric", 1 },
            { "numeric", 9 },
            { "numeric", 25 },
        };

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_fit_is_the_published_one(string table, int nodes)
    {
        var (fit, expected) = (Fit(table, nodes), Expected.Of("cbpp", "fits", table, $"nAGQ{nodes}"));
        Assert.Equal(expected.GetProperty("loglik_without_binomial_constant").GetDouble(), fit.LogLikelihood, 1e-5);
        foreach (var (name, value) in expected.GetProperty("beta").EnumerateObject().Select(p => (p.Name, p.Value.GetDouble())))
            Assert.Equal(value, Of(fit, name).Estimate!.Value, 1e-4);
        foreach (var (name, value) in expected.GetProperty("se_beta").EnumerateObject().Select(p => (p.Name, p.Value.GetDouble())))
            Assert.Equal(1, Of(fit, name).StandardError!.Value / value, 1e-3);
        Assert.Equal(expected.GetProperty("sigma_herd").GetDouble(), fit.Groups.Single().Spreads.Single().Estimate!.Value, 1e-4);
        Assert.Equal(nodes, fit.Nodes);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Modes_and_their_sds_are_the_published_ones(string table, int nodes)
    {
        var levels = Fit(table, nodes).Groups.Single().Levels.ToDictionary(level => level.Label);
        var expected = Expected.Of("cbpp", "fits", table, $"nAGQ{nodes}").GetProperty("modes").EnumerateArray().ToArray();
        Assert.Equal(expected.Length, levels.Count);
        foreach (var herd in expected)
        {
            var effect = levels[herd.GetProperty("photographer").GetString()!].Effects.Single();
            Assert.Equal(herd.GetProperty("mode").GetDouble(), effect.Mode, 1e-4);
            Assert.Equal(herd.GetProperty("cond_sd").GetDouble(), effect.StandardDeviation, 1e-4);
        }
    }

    private static LinearFit Fit(string table, int? nodes) =>
        (PublishedTables.Likelihood with { Terms = table == "factor" ? ["period"] : [], Varies = [new("photographer")], Nodes = nodes })
            .Fit(PublishedTables.Table("cbpp", table + ".csv"))
            .Only.Linear!;

    private static Coefficient Of(LinearFit fit, string theirs) =>
        fit.Coefficients.Single(c =>
            c.Name
            == theirs switch
            {
                "(Intercept)" => "intercept",
                "x" => "log2Exposure",
                _ => theirs.Replace("period", "period=t", StringComparison.Ordinal),
            }
        );
}
