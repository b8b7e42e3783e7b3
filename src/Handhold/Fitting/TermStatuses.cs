using System.Collections.Immutable;
using System.Globalization;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>What a reader of a fitted curve with terms should know.</summary>
internal static class TermStatuses
{
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
        var moved = posterior.Moved;
        CurveStatuses.AddPriorDominated(model, moved.Tau0, moved.Effects.Select((e, j) => (e.Name, moved.Prior(j))), parameters, statuses);
        CurveStatuses.AddBursts(model, data, statuses);
        CurveStatuses.AddShooting(data, statuses);
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
}
