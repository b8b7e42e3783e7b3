using System.Collections.Immutable;

namespace Handhold.Prediction;

/// <summary>Whether two sides that are compared were shot on a day together.</summary>
internal static class DaysOfSides
{
    private static Status Confounded { get; } =
        new(
            StatusCode.ConfoundedWithSession,
            "The two sides were shot on different days, so each side's luck of the day is part of the difference. Shoot both on one day, in turn, to part them."
        );

    private static Status ConfoundedAndUncounted { get; } =
        new(
            StatusCode.ConfoundedWithSession,
            "The two sides were shot on different days, and this estimator knows no luck of a day: the difference may be the days'. Shoot both on one day, in turn, or ask the posterior."
        );

    /// <summary>The days of a side.</summary>
    internal static HashSet<(string?, string?)> Of(IEnumerable<FrameCell> cells) =>
        [.. cells.Select(c => (c.Conditions.Photographer, c.Conditions.Session))];

    /// <summary>What to say of two curves.</summary>
    internal static ImmutableArray<Status> Remarks(KeeperCurve a, KeeperCurve b) => Remarks(a, a.Data.Cells, b.Data.Cells);

    /// <summary>What to say of two conditions of one curve; where no frame was shot under one, nothing.</summary>
    internal static ImmutableArray<Status> Remarks(KeeperCurve curve, Conditions a, Conditions b)
    {
        string[] apart =
        [
            .. curve
                .Terms.SelectMany(t => t.Columns)
                .Concat(curve.Model.Varies.SelectMany(v => v.Path))
                .Where(column => a[column] != b[column]),
        ];
        return Remarks(curve, curve.Data.Cells.Where(c => IsUnder(c, a)), curve.Data.Cells.Where(c => IsUnder(c, b)));

        bool IsUnder(FrameCell cell, Conditions side) => apart.All(column => cell.Conditions[column] == side[column]);
    }

    private static ImmutableArray<Status> Remarks(KeeperCurve curve, IEnumerable<FrameCell> a, IEnumerable<FrameCell> b)
    {
        var (daysA, daysB) = (Of(a), Of(b));
        return daysA.Count == 0 || daysB.Count == 0 || daysA.Overlaps(daysB)
            ? []
            : [curve.Linear is null ? Confounded : ConfoundedAndUncounted];
    }
}
