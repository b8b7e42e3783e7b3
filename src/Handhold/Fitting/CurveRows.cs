using System.Collections.Immutable;
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
        ImmutableArray<string> columns = [.. model.Each.Where(c => table.Any(r => r.Conditions[c] is not null))];
        var burstRow = 0;
        var groups = new Dictionary<string, (CurveKey Key, List<FrameCell> Rows)>(StringComparer.Ordinal);
        var values = new string[columns.Length];
        foreach (var row in table)
        {
            burstRow++;
            for (var c = 0; c < values.Length; c++)
                values[c] =
                    row.Conditions[columns[c]]
                    ?? throw new CellException(
                        $"Row {burstRow}",
                        $"it has no {columns[c]}, but other rows have.",
                        $"Fill in the {columns[c]} of every row, or leave the column out."
                    );
            var name = string.Join('\u001f', values);
            if (!groups.TryGetValue(name, out var group))
                groups[name] = group = (new([.. columns.Zip(values, KeyValuePair.Create)]), []);
            group.Rows.Add(
                model.Bursts == BurstUse.PerRow
                    ? With(row, row.Conditions with { Burst = FormattableString.Invariant($"row {burstRow}") })
                    : row
            );
        }

        return EachCurve.Do(
            [.. groups.OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Value)],
            g => Pool(model, g.Key, g.Rows, columns)
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
        Conditions[] all = [.. rows.Select(r => r.Conditions).Distinct()];
        Refuse(
            all,
            c => c.Criterion?.Name ?? "none recorded",
            "criterion",
            key,
            "Frames judged by different criteria are never pooled: add criterion to the columns that split curves."
        );
        Conditions[] conditions = [.. rows.Where(r => r.Frames > 0).Select(r => r.Conditions).Distinct()];
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
        var pooled = all.ToDictionary(c => c, c => Kept(c, model, kept));
        var cells = Pooled(rows.Where(r => r.Frames > 0), g => new(g.Key.Exposure, g.Sum(r => r.Frames), g.Sum(r => r.Keepers)), pooled);
        ImmutableArray<SpeedCount> speeds =
        [
            .. cells
                .GroupBy(c => c.Exposure)
                .OrderBy(g => g.Key.Seconds)
                .Select(g => new SpeedCount(g.Key, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))),
        ];
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
            speeds,
            cells[0].Conditions.Criterion,
            sessions
        )
        {
            NotJudged = Pooled(
                rows.Where(r => r.Unjudged > 0),
                g => new(g.Key.Exposure, 0, 0) { Unjudged = g.Sum(r => r.Unjudged) },
                pooled
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

    /// <summary>Rows of equal exposure and conditions as one cell, in a canonical order.</summary>
    private static ImmutableArray<FrameCell> Pooled(
        IEnumerable<FrameCell> rows,
        Func<IGrouping<(ShutterSpeed Exposure, Conditions Conditions), FrameCell>, FrameCell> pool,
        Dictionary<Conditions, Conditions> kept
    ) =>
        [
            .. rows.GroupBy(r => (r.Exposure, Conditions: kept[r.Conditions]))
                .Select(g => pool(g) with { Conditions = g.Key.Conditions })
                .Order(CellOrder.Canonical),
        ];

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

    private static FrameCell With(FrameCell row, Conditions conditions) => row with { Conditions = conditions };

    private static void Refuse(Conditions[] conditions, Func<Conditions, string> value, string column, CurveKey key, string remedy)
    {
        var values = conditions.Select(value).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (values.Length > 1)
            throw new CellException($"Curve {key}", $"its frames differ in {column}: {string.Join(", ", values)}.", remedy);
    }
}
