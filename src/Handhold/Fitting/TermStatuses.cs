using System.Collections.Immutable;
using System.Globalization;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>What a reader of a fitted curve with terms should know.</summary>
internal static class TermStatuses
{
    private const double Dominated = 0.9;

    internal static ImmutableArray<Status> Of(
        KeeperModel model,
        CurveData data,
        TermPosterior posterior,
        ImmutableArray<ParameterSummary> parameters,
        Sampling sampling,
        ImmutableArray<ExpectedCount> expected
    )
    {
        var statuses = ImmutableArray.CreateBuilder<Status>();
        CurveStatuses.AddExtremes(data, statuses);
        var informed = posterior
            .Moved.Effects.Select((e, j) => (e.Name, posterior.Moved.Prior(j)))
            .ToDictionary(e => e.Name, e => e.Item2.StandardDeviation);
        informed["tau0"] = posterior.Moved.Tau0.StandardDeviation;
        informed["log2b"] = model.Priors.Steepness.LogStandardDeviation / Math.Log(2);
        var names = parameters
            .Where(p => informed.TryGetValue(p.Name, out var prior) && p.StandardDeviation > Dominated * prior)
            .Select(p => p.Name)
            .ToArray();
        if (names.Length > 0)
            statuses.Add(
                new(
                    StatusCode.PriorDominated,
                    $"The data hardly inform {string.Join(", ", names.Select(Word))}: what is said of {(names.Length == 1 ? "it" : "them")} is mostly the prior."
                )
            );
        CurveStatuses.AddBursts(model, data, statuses);
        CurveStatuses.AddMisfit(expected, statuses);
        if (sampling.IsPoor)
            statuses.Add(
                new(
                    StatusCode.Approximate,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The posterior is far from the shape that its points were drawn from (Pareto k {sampling.ParetoK:0.00}, effective size {sampling.EffectiveSize:0}), so its numbers are approximate. Fewer terms, or priors of your own, would help."
                    )
                )
            );
        return statuses.ToImmutable();
    }

    private static string Word(string parameter) =>
        parameter switch
        {
            "tau0" => "the half point",
            "log2b" => "the steepness",
            "log2HandSpeed" => "the speed of the hands",
            _ => parameter,
        };
}
