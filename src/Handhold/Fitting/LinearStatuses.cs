using System.Collections.Immutable;
using System.Globalization;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>What a reader of a likelihood or bias-reduced curve should know.</summary>
internal static class LinearStatuses
{
    private static ImmutableHashSet<string> Approximated { get; } = ["focal", "stabiliser", "magnification"];

    internal static ImmutableArray<Status> Of(KeeperModel model, CurveData data, LinearFit linear, ImmutableArray<ExpectedCount> expected)
    {
        var statuses = ImmutableArray.CreateBuilder<Status>();
        if (!linear.Likelihood.Layout.HasExposure)
            Add(
                StatusCode.SingleExposure,
                $"All frames were shot at {data.Fastest}, so there is no exposure term: the rate there is fitted, and no other speed can be answered for. Shoot a stop or two faster and slower."
            );
        if (SeparationWords.Of(data, linear) is { } separation)
            statuses.Add(separation);
        if (Slope(linear) is { } slope)
        {
            if (slope.Estimate > 0)
                Add(
                    StatusCode.WrongDirection,
                    "Keepers become more frequent at slower speeds. Check the exposure column and the verdicts before trusting any speed from this curve."
                );
            if (slope.Interval is { Lower: null or < 0, Upper: null or > 0 })
                Add(
                    StatusCode.FlatNotExcluded,
                    "The data do not exclude that the exposure makes no difference, so intervals of exposures and stops may have no ends. More frames at faster and slower speeds would settle it."
                );
        }

        if (linear.ChangingSteepness is [_, ..] changing)
            Add(
                StatusCode.SlopeVaries,
                $"The steepness depends on {Listing.And(changing)}, so what that costs in stops depends on the rate: compare at the rate you want."
            );
        if (model.Ceiling.Value is null && linear.CeilingStandardError is null)
            Add(
                StatusCode.CeilingNotIdentified,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The likelihood is highest with the ceiling at {linear.Ceiling:0.###}, the end of its range, so it has no standard error. Frames at very fast speeds would tell it; or give it with a number."
                )
            );
        var approximated = linear.Likelihood.Layout.Terms.Select(t => t.Name).Where(Approximated.Contains).ToArray();
        if (approximated.Length > 0)
            Add(
                StatusCode.Approximate,
                $"{string.Join(", ", approximated)}: shifts in proportion{(linear.Likelihood.Layout.Columns.Any(c => c.StartsWith("stabiliser", StringComparison.Ordinal) && c.EndsWith("×magnification", StringComparison.Ordinal)) ? ", and a product of stabiliser and magnification," : "")} stand in for motions that add in quadrature. The posterior has those."
            );
        CurveStatuses.AddShooting(data, statuses);
        LuckStatuses.Add(model, data, linear, statuses);
        GroupStatuses.Add(model, data, linear, statuses);
        CurveStatuses.AddMisfit(expected, statuses);
        return statuses.ToImmutable();

        void Add(StatusCode code, string message) => statuses.Add(new(code, message));
    }

    private static Coefficient? Slope(LinearFit linear) =>
        linear.Likelihood.Layout.HasExposure && linear.ChangingSteepness.IsEmpty ? linear.Coefficients[1] : null;
}
