using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Fitting;

/// <summary>What a reader of a posterior in which levels vary should know.</summary>
internal static class VaryingStatuses
{
    private const double Matters = 0.05; // standard deviations

    internal static ImmutableArray<Status> Of(
        KeeperModel model,
        CurveData data,
        VaryingSample sample,
        ImmutableArray<ParameterSummary> parameters,
        ImmutableArray<VaryingLevels> levels,
        VaryingLeaveOneOut others
    )
    {
        var statuses = ImmutableArray.CreateBuilder<Status>();
        CurveStatuses.AddExtremes(data, statuses);
        var (moved, spreads) = (sample.Posterior.Moved, sample.Posterior.Spreads);
        CurveStatuses.AddPriorDominated(model, moved.Tau0, moved.Effects.Select((e, j) => (e.Name, moved.Prior(j))), parameters, statuses);
        foreach (var only in spreads.Where(s => s.Effect is null && s.Grouping.Levels.Length == 1))
            statuses.Add(
                new(
                    StatusCode.PriorDominated,
                    $"There is one {only.Grouping.Varying.Column} only, so how much {only.Grouping.Varying.Column}s differ is the prior's. Frames of a second one would tell."
                )
            );
        GroupStatuses.AddRepeats([.. spreads.Select(s => s.Grouping)], data.Cells, statuses);
        CurveStatuses.AddBursts(model, data, statuses);
        CurveStatuses.AddShooting(data, statuses);
        CurveStatuses.AddMisfit(others.Suspicious, statuses, others.Count);
        if (
            Doubt(
                sample.Sampling,
                [.. parameters, .. levels.SelectMany(l => l.Spreads), .. levels.Select(l => l.Correlation).OfType<ParameterSummary>()]
            ) is
            { } doubt
        )
            statuses.Add(
                new(StatusCode.Approximate, $"The numbers are approximate: {doubt}. Fewer columns that vary, or more frames, would help.")
            );
        return statuses.ToImmutable();
    }

    /// <summary>What a reader of one level should know beside.</summary>
    internal static ImmutableArray<Status> Of(string level, Sampling sampling, ImmutableArray<ParameterSummary> effects) =>
        Doubt(sampling, effects) is { } doubt ? [new(StatusCode.Approximate, $"What is said of {level} is approximate: {doubt}.")] : [];

    /// <summary>The status of an answer for levels that the points stand badly for; null where they stand well.</summary>
    internal static Status? Of(Sampling sampling) =>
        Doubt(sampling) is { } doubt ? new(StatusCode.Approximate, $"For these levels the answer is approximate: {doubt}.") : null;

    /// <summary>Why numbers are approximate; null where they are not. What more nodes change is counted at the points, so it is told only where these can be trusted.</summary>
    private static string? Doubt(Sampling sampling, ImmutableArray<ParameterSummary> numbers) =>
        Doubt(sampling)
        ?? (
            numbers.Max(n => Math.Abs(n.NodeChange!.Value)) is var change && change > Matters
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"more quadrature nodes, 15 instead of 9 for the finest levels, move a parameter by {change:0.000} of its standard deviation ({Matters} is the limit)"
                )
                : null
        );

    private static string? Doubt(Sampling sampling) =>
        sampling.IsPoor
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"the points that stand for the posterior have Pareto k {sampling.ParetoK:0.00} (limit 0.7) and effective size {sampling.EffectiveSize:0} (at least 400)"
            )
            : null;
}
