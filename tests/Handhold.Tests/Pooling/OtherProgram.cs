using System.Text.Json;

namespace Handhold.Tests.Pooling;

/// <summary>A fit of one varying intercept beside what another mixed-model program found.</summary>
internal static class OtherProgram
{
    internal static void Agrees(JsonElement expected, LinearFit fit)
    {
        Assert.Equal(expected.GetProperty("logLikelihood").GetDouble(), fit.LogLikelihood, 1e-5);
        foreach (var coefficient in fit.Coefficients)
        {
            var theirs = coefficient.Name switch
            {
                "intercept" => "(Intercept)",
                "log2Exposure" => "x",
                var name => name.Replace("=", "", StringComparison.Ordinal),
            };
            Assert.Equal(expected.GetProperty("beta").GetProperty(theirs).GetDouble(), coefficient.Estimate!.Value, 1e-3);
            Assert.Equal(1, coefficient.StandardError!.Value / expected.GetProperty("se").GetProperty(theirs).GetDouble(), 1e-3);
        }

        Assert.Equal(expected.GetProperty("sd").GetDouble(), fit.Groups.Single().Spreads.Single().Estimate!.Value, 1e-3);
    }

    internal static void AgreesOnModes(JsonElement expected, LinearFit fit)
    {
        foreach (var level in fit.Groups.Single().Levels)
        {
            Assert.Equal(expected.GetProperty("modes").GetProperty(level.Label).GetDouble(), level.Effects[0].Mode, 1e-3);
            Assert.Equal(expected.GetProperty("modeSds").GetProperty(level.Label).GetDouble(), level.Effects[0].StandardDeviation, 1e-3);
        }
    }
}
