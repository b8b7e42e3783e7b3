using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>What a reader of a fitted curve should know.</summary>
internal static class CurveStatuses
{
    internal static ImmutableArray<Status> Of(
        KeeperModel model,
        CurveRows rows,
        ImmutableArray<ParameterSummary> parameters,
        CurvePosterior posterior,
        CancellationToken cancellation
    )
    {
        _ = (model, rows, parameters, posterior, cancellation);
        return [];
    }
}
