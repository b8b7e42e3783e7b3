using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>The rows of one curve, pooled into canonical cells.</summary>
/// <param name="Key">What splits it from the other curves.</param>
/// <param name="Data">Counts and cells.</param>
/// <param name="Prior">Prior of its half point, which only a posterior asks for.</param>
internal sealed record CurveRows(CurveKey Key, CurveData Data, Lazy<NormalPrior> Prior)
{
    internal NormalPrior HalfPoint => Prior.Value;

    /// <summary>The curve when all frames not judged are called rejects; null where there are none.</summary>
    internal Lazy<KeeperCurve>? AsRejects { get; init; }

    /// <summary>Columns that shift a curve: frames that differ there are unlike.</summary>
    private static ImmutableArray<string> ShiftingColumns { get; } =
    [
        "focal_eq_mm",
        "focal_mm",
        "crop",
        "stabiliser_stops",
        "stabiliser_mode",
        "magnification",
        "subject_distance_m",
        "subject_motion",
        "subject_speed_mm_s",
    ];

    /// <summary>Splits a table into curves, ordered by key.</summary>
    /// <exception cref="CellException">Rows cannot make a curve together.</exception>
    internal static ImmutableArray<CurveRows> Split(KeeperModel model, FrameTable table)
    {
        if (table.Count == 0)
            throw new CellException("The table", "it has no rows.", "Give at least one judged frame.");
        var gathered = GatheredRows.Of(model, table);
        return EachCurve.Do(
            [.. gathered.Curves.OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Value)],
            g => Pool(model, g.Key, g.Rows, gathered.Columns)
        );
    }

    /// <summary>What moves the half point: the terms, or nothing.</summary>
    internal WhatMoved Moved(KeeperModel model) =>
        WhatMoved.IsCalledFor(model, [.. Data.Cells.Select(c => c.Conditions).Distinct()])
            ? WhatMoved.Of(model, Data.Cells, $"Curve {Key}")
            : WhatMoved.Nothing(HalfPoint);

    private static CurveRows Pool(KeeperModel model, CurveKey key, List<FrameCell> rows, ImmutableArray<string> columns)
    {
        if (rows.Sum(r => (long)r.Frames) == 0)
            throw new CellException($"Curve {key}", "none of its frames was judged.", "Judge some of them, or leave its rows out.");
        var all = Distinct(rows);
        Refuse(
            all,
            c => c.Criterion?.Name ?? "none recorded",
            "criterion",
            key,
            "Frames judged by different criteria are never pooled: add criterion to the columns that split curves."
        );
        var conditions = rows.TrueForAll(r => r.Frames > 0) ? all : Distinct(rows.Where(r => r.Frames > 0));
        var (terms, explained) =
            model.Estimator == Estimator.Posterior && !WhatMoved.IsCalledFor(model, conditions)
                ? ([], [])
                : (
                    TermChoice.Of(model, conditions).SelectMany(t => t.Columns),
                    model.Estimator == Estimator.Posterior
                        ? WhatMoved.Explained(model, conditions)
                        : TermChoice.Explained(model, conditions)
                );
        if (all.Length > 1 && !model.PoolConditions && model.Terms.IsEmpty)
            foreach (var column in ShiftingColumns.Except(explained))
                Refuse(
                    all,
                    c => c[column] ?? "not recorded",
                    column,
                    key,
                    $"Give them a curve each (--each with {column}, or a setup each), or pool them knowingly (--no-terms)."
                );

        HashSet<string> kept = [.. columns, .. terms, .. model.Varies.SelectMany(v => v.Path)];
        var pooled = Kept(all, model, kept);
        var cells = Pooled(rows.Where(r => r.Frames > 0), pooled, (r, c) => r.Judged(c));
        ImmutableArray<string> sessions =
        [
            .. cells.Select(c => c.Conditions.Session).OfType<string>().Distinct().Order(StringComparer.Ordinal),
        ];
        var bursts = cells
            .Where(c => c.Conditions.Burst is not null)
            .GroupBy(c => (c.Conditions.Photographer, c.Conditions.Setup, c.Conditions.Session, c.Conditions.Burst));
        CurveData data = new(
            rows.Sum(r => r.Rows),
            rows.Sum(r => r.Unjudged + r.Elsewhere),
            cells.Select(c => (c.Conditions.Photographer, c.Conditions.Session)).Distinct().Count(),
            bursts.Count(b => b.Sum(c => c.Frames) > 1),
            cells,
            SpeedCount.Of(cells),
            cells[0].Conditions.Criterion,
            sessions
        )
        {
            NotJudged = Pooled(
                rows.Where(r => r.Unjudged > 0),
                pooled,
                (r, c) => new(r.Exposure, 0, 0) { Unjudged = r.Unjudged, Conditions = c }
            ),
            IsOrderConfounded = ShotInOrder.IsConfounded(rows),
            Survivors = RejectsDeleted.Among(rows),
        };
        return new(key, data, new(() => model.Priors.HalfPoint ?? Anchor(cells, model.Priors.Anchor)));
    }

    /// <summary>The prior at the conditions of the cells; where they differ, a normal with the moments of their mixture by frames.</summary>
    private static NormalPrior Anchor(ImmutableArray<FrameCell> cells, AnchorPriors priors)
    {
        var (frames, first, second) = (0.0, 0.0, 0.0);
        foreach (var group in cells.GroupBy(c => c.Conditions with { Session = null, Burst = null, Photographer = null, Setup = null }))
        {
            var prior = PriorAnchor.For(group.Key, priors);
            var weight = (double)group.Sum(c => c.Frames);
            frames += weight;
            first += weight * prior.Mean;
            second += weight * (prior.StandardDeviation * prior.StandardDeviation + prior.Mean * prior.Mean);
        }

        var mean = first / frames;
        return new(mean, Math.Sqrt(second / frames - mean * mean));
    }

    private static Conditions[] Distinct(IEnumerable<FrameCell> rows) =>
        [.. Neighbours.Joined(rows.Select(r => r.Conditions), (a, b) => a == b ? a : null).Distinct()];

    /// <summary>Rows of equal exposure and conditions as one cell of some of their counts, in a canonical order.</summary>
    private static ImmutableArray<FrameCell> Pooled(
        IEnumerable<FrameCell> rows,
        Dictionary<Conditions, Conditions> kept,
        Func<FrameCell, Conditions, FrameCell> counts
    )
    {
        var (last, lastKept) = (Conditions.None, kept.GetValueOrDefault(Conditions.None, Conditions.None));
        return
        [
            .. Neighbours.Joined(
                rows.Select(r => counts(r, Of(r.Conditions))).Order(CellOrder.Canonical),
                (a, b) =>
                    a.Exposure == b.Exposure && a.Conditions == b.Conditions
                        ? new(a.Exposure, a.Frames + b.Frames, a.Keepers + b.Keepers)
                        {
                            Unjudged = a.Unjudged + b.Unjudged,
                            Conditions = a.Conditions,
                        }
                        : null
            ),
        ];

        Conditions Of(Conditions all)
        {
            if (all != last)
                (last, lastKept) = (all, kept[all]);
            return lastKept;
        }
    }

    /// <summary>What a curve remembers of its conditions; equal ones as one object.</summary>
    private static Dictionary<Conditions, Conditions> Kept(Conditions[] conditions, KeeperModel model, HashSet<string> columns)
    {
        HashSet<Conditions> kept = [];
        return conditions.ToDictionary(
            all => all,
            all =>
            {
                var own = Kept(all, model, columns);
                if (!kept.TryGetValue(own, out var same))
                    kept.Add(same = own == all ? all : own);
                return same;
            }
        );
    }

    private static Conditions Kept(Conditions all, KeeperModel model, HashSet<string> columns) =>
        all with
        {
            Burst = model.Bursts == BurstUse.None ? null : all.Burst,
            BurstPosition = columns.Contains("burst_position") ? all.BurstPosition : null,
            Order = columns.Contains("order") ? all.Order : null,
            Judge = columns.Contains("judge") ? all.Judge : null,
            Cause = columns.Contains("cause") ? all.Cause : null,
            Support = columns.Contains("support") ? all.Support : null,
            Others = all.Others.RemoveRange(all.Others.Keys.Where(k => !columns.Contains(k))),
        };

    private static void Refuse(Conditions[] conditions, Func<Conditions, string> value, string column, CurveKey key, string remedy)
    {
        var values = conditions.Select(value).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (values.Length > 1)
            throw new CellException($"Curve {key}", $"its frames differ in {column}: {string.Join(", ", values)}.", remedy);
    }
}
