using System.Text.Json;
using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>Invented photographers and setups against two general-purpose programs.</summary>
public class SimulatedGroupFacts
{
    private const string Case = "grouped-simulated";
    private const double Near = 1e-4;

    [Theory]
    [InlineData("nested")]
    [InlineData("nestedBoth")]
    [InlineData("uncorrelated")]
    [InlineData("slope")]
    [InlineData("crossed")]
    public void Coefficients_errors_and_spreads_are_those_of_two_other_programs(string structure)
    {
        var fit = Groups.Fit(structure);
        foreach (var program in (string[])["lme4", "glmmTMB"])
        {
            var expected = Expected.Of(Case, "fits", structure, program);
            Assert.Equal(expected.GetProperty("logLikelihood").GetDouble(), fit.LogLikelihood, 1e-6);
            foreach (var coefficient in fit.Coefficients)
            {
                var theirs = Theirs(coefficient.Name);
                Assert.Equal(expected.GetProperty("beta").GetProperty(theirs).GetDouble(), coefficient.Estimate!.Value, Near);
                Assert.Equal(expected.GetProperty("se").GetProperty(theirs).GetDouble(), coefficient.StandardError!.Value, Near);
            }

            foreach (var group in fit.Groups)
            {
                var spreads = Of(expected.GetProperty("spreads"), group).ToDictionary(p => p.Name, p => p.Value.GetDouble());
                foreach (var spread in group.Spreads)
                    Assert.Equal(spreads[Theirs(spread.Name)], spread.Estimate!.Value, Near);
                Assert.Equal(group.Correlation is not null, spreads.ContainsKey("correlation"));
                if (group.Correlation is { } correlation)
                    Assert.Equal(spreads["correlation"], correlation, Near);
            }
        }
    }

    [Theory]
    [InlineData("nested")]
    [InlineData("nestedBoth")]
    [InlineData("uncorrelated")]
    [InlineData("slope")]
    [InlineData("crossed")]
    public void Modes_are_those_of_another_program(string structure)
    {
        var modes = Expected.Of(Case, "fits", structure, "lme4", "modes");
        foreach (var group in Groups.Fit(structure).Groups)
        {
            var effects = Of(modes, group).ToDictionary(p => p.Name, p => p.Value);
            foreach (var level in group.Levels)
            foreach (var effect in level.Effects)
                Assert.Equal(
                    effects[Theirs(effect.Name)]
                        .GetProperty(level.Parent is null ? level.Label : $"{level.Parent} {level.Label}")
                        .GetDouble(),
                    effect.Mode,
                    Near
                );
        }
    }

    private static string Theirs(string name) => name == "intercept" ? "(Intercept)" : "x";

    /// <summary>Their <c>own</c> is a setup within its photographer; uncorrelated effects stand beside each other.</summary>
    private static IEnumerable<JsonProperty> Of(JsonElement groups, GroupSpread group) =>
        groups
            .EnumerateObject()
            .Where(g =>
                g.Name == (group.Varying.Within.IsEmpty ? group.Varying.Column : "own")
                || g.Name.StartsWith(group.Varying.Column + ".", StringComparison.Ordinal)
            )
            .SelectMany(g => g.Value.EnumerateObject());
}
