using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Fitting;

/// <summary>What a reader of a posterior in which levels vary should know.</summary>
internal static class VaryingStatuses
{
    private const double Matters = 0.05; // standard deviations
    private const string Remedy = "Fewer columns that vary, or more frames, would help.";

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
                "the points that stand for the posterior",
                [.. parameters, .. levels.SelectMany(l => l.Spreads), .. levels.Select(l => l.Correlation).OfType<ParameterSummary>()],
                "a parameter"
            ) is
            { } doubt
        )
            statuses.Add(new(StatusCode.Approximate, $"The numbers are approximate: {doubt}. {Remedy}"));
        return statuses.ToImmutable();
    }

    /// <summary>What a reader of one level should know beside.</summary>
    internal static ImmutableArray<Status> Of(string level, Sampling sampling, ImmutableArray<ParameterSummary> effects) =>
        Doubt(sampling, "the draws that stand for it", effects, "one of its effects") is { } doubt
            ? [new(StatusCode.Approximate, $"What is said of {level} is approximate: {doubt}. {Remedy}")]
            : [];

    /// <summary>The status of an answer for levels that the points stand badly for; null where they stand well.</summary>
    internal static Status? Of(Sampling sampling) =>
        Doubt(sampling, "the draws that stand for them", [], "") is { } doubt
            ? new(StatusCode.Approximate, $"For these levels the answer is approximate: {doubt}. {Remedy}")
            : null;

    /// <summary>Why numbers are approximate; null where they are not. What more nodes change is counted at the points, so it is told where these are good only.</summary>
    private static string? Doubt(Sampling sampling, string points, ImmutableArray<ParameterSummary> numbers, string number)
    {
        if (sampling.IsPoor)
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{points} have Pareto k {sampling.ParetoK:0.00} (limit 0.7) and effective size {sampling.EffectiveSize:0} (at least 400)"
            );
        var most = numbers.Select(n => Math.Abs(n.NodeChange!.Value)).Aggregate(0.0, Math.Max);
        if (most <= Matters)
            return null;
        var far = double.IsFinite(most)
            ? string.Create(CultureInfo.InvariantCulture, $"by {most:0.000} of its standard deviation")
            : "out of sight";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"more quadrature nodes, 15 instead of 9 for the finest levels, move {number} {far} ({Matters} is the limit)"
        );
    }
}
