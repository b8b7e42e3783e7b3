using System.Collections.Immutable;
using System.Globalization;
using Handhold.Curves;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>What to say of levels that were fitted together, or could not be.</summary>
internal static class GroupStatuses
{
    // Standard errors by which what Laplace's method leaves out moves an estimate.
    private const double Noticed = 0.1;

    internal static void Add(KeeperModel model, CurveData data, LinearFit linear, ImmutableArray<Status>.Builder statuses)
    {
        if (model.Varies.IsEmpty)
            return;
        if (linear.Likelihood.Grouped is not { } grouped)
        {
            Add(
                StatusCode.GroupsNotAssessable,
                $"Keepers and rejects separate, so how much varies by {Listing.And(model.Varies.Select(v => v.Column).Distinct())} cannot be told, and all frames are taken as of one curve. Frames at speeds where some are kept and some are not would tell."
            );
            return;
        }

        foreach (var group in linear.Groups)
        {
            if (group.Spreads.Where(s => s.Estimate == 0).ToArray() is [_, ..] none)
                Add(
                    StatusCode.NoGroupSpread,
                    $"{Alike(group)}, so the spread of {Listing.And(none.Select(s => s.Name))} is estimated as none{AtMost(none, linear.Level)}."
                );
            else if (group.Correlation is { } correlation && Math.Abs(correlation) > 1 - 1e-9)
                Add(
                    StatusCode.NoGroupSpread,
                    $"Height and slope of {group.Varying.Column} go together exactly (correlation {(correlation > 0 ? "1" : "-1")}): the data show one direction of spread only."
                );
        }

        if (!grouped.Fit.HasSettled)
            Add(
                StatusCode.Approximate,
                FormattableString.Invariant(
                    $"{grouped.Fit.Nodes} quadrature nodes do not settle the log-likelihood: the spread is so large that its numbers are approximate."
                )
            );
        if (grouped.Fit.Shifts is { } shifts && shifts.Max(Math.Abs) is > Noticed and var most)
            Add(
                StatusCode.Approximate,
                FormattableString.Invariant(
                    $"Levels have so few frames that Laplace's method is off: estimates would move by up to {most:0.00} standard errors. {Remedy(grouped)}"
                )
            );
        AddRepeats(grouped.Layout.Groupings, data.Cells, statuses);

        void Add(StatusCode code, string message) => statuses.Add(new(code, message));
    }

    internal static void AddRepeats(
        ImmutableArray<Grouping> groupings,
        ImmutableArray<FrameCell> cells,
        ImmutableArray<Status>.Builder statuses
    )
    {
        foreach (var (inner, outer) in Repeats(groupings, cells).Distinct())
            statuses.Add(
                new(
                    StatusCode.LabelsRepeat,
                    $"Labels of {inner} occur under several labels of {outer} and are taken for the same {inner} everywhere. If each {outer} has its own, say that {inner} lies within {outer} (--within {inner}={outer})."
                )
            );
    }

    /// <summary>Pairs of columns that vary side by side, of which the one of more labels shares a label between labels of the other.</summary>
    private static IEnumerable<(string Inner, string Outer)> Repeats(ImmutableArray<Grouping> groupings, ImmutableArray<FrameCell> cells) =>
        from outer in groupings
        from inner in groupings
        where
            inner.Varying.Within.IsEmpty
            && outer.Varying.Within.IsEmpty
            && IsInside(inner.Varying.Column, outer.Varying.Column)
            && cells
                .Select(c => (Inner: c.Conditions[inner.Varying.Column], Outer: c.Conditions[outer.Varying.Column]))
                .Distinct()
                .GroupBy(pair => pair.Inner)
                .Any(g => g.Count() > 1)
        select (inner.Varying.Column, outer.Varying.Column);

    /// <summary>Photographers hold setups, setups see sessions, sessions have bursts; of other columns any may lie within any other.</summary>
    private static bool IsInside(string inner, string outer)
    {
        var (i, o) = (Order.IndexOf(inner), Order.IndexOf(outer));
        return inner != outer && (i < 0 || o < 0 ? string.CompareOrdinal(outer, inner) < 0 : o < i);
    }

    private static ImmutableArray<string> Order { get; } = ["photographer", "setup", "session", "burst"];

    private static string Remedy(GroupedCurve grouped) =>
        grouped.Fit.IsOneIntercept
            ? "Leave the number of nodes open (without --nodes), and it is integrated as finely as needed."
            : "Let one intercept vary, which is integrated as finely as needed, or shoot more frames a level.";

    private static string Alike(GroupSpread group) =>
        group.Levels.Length == 1
            ? $"There is one {group.Varying.Column} only"
            : $"One {group.Varying.Column} differs from another no more than chance makes them";

    private static string AtMost(Coefficient[] none, double level) =>
        none.All(s => s.Interval.Upper is not null)
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"; with {100 * level:0.##} % confidence {(none.Length == 1 ? "it is" : "they are")} at most {Listing.And(none.Select(s => s.Interval.Upper!.Value.ToString("0.00", CultureInfo.InvariantCulture)))} on the link's scale"
            )
            : "";
}
