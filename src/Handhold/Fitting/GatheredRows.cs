using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>The rows of each curve in the order of their table. Stretches of it are read side by side; the result does not depend on how many.</summary>
/// <param name="Columns">The columns that split it.</param>
/// <param name="Curves">By the labels of these columns, joined.</param>
internal sealed record GatheredRows(ImmutableArray<string> Columns, Dictionary<string, (CurveKey Key, List<FrameCell> Rows)> Curves)
{
    private const int Stretch = 4096;

    /// <exception cref="CellException">A row lacks a label that others have.</exception>
    internal static GatheredRows Of(KeeperModel model, FrameTable table)
    {
        int[] starts = [.. Enumerable.Range(0, (table.Count + Stretch - 1) / Stretch).Select(s => s * Stretch)];
        var present = EachCurve.Do(
            starts,
            from => model.Each.Select(c => Rows(table, from).Any(i => table[i].Conditions[c] is not null)).ToArray()
        );
        ImmutableArray<string> columns = [.. model.Each.Where((_, c) => present.Any(p => p[c]))];
        var stretches = EachCurve.Do(starts, from => Gather(model, table, from, columns));
        var all = stretches[0];
        foreach (var (name, curve) in stretches.Skip(1).SelectMany(s => s))
            if (!all.TryAdd(name, curve))
                all[name].Rows.AddRange(curve.Rows);
        return new(columns, all);
    }

    private static IEnumerable<int> Rows(FrameTable table, int from) => Enumerable.Range(from, Math.Min(Stretch, table.Count - from));

    private static Dictionary<string, (CurveKey Key, List<FrameCell> Rows)> Gather(
        KeeperModel model,
        FrameTable table,
        int from,
        ImmutableArray<string> columns
    )
    {
        Dictionary<string, (CurveKey Key, List<FrameCell> Rows)> curves = new(StringComparer.Ordinal);
        var (values, last) = (new string[columns.Length], Array.Empty<string>());
        List<FrameCell> rows = [];
        foreach (var i in Rows(table, from))
        {
            var row = table[i];
            for (var c = 0; c < values.Length; c++)
                values[c] =
                    row.Conditions[columns[c]]
                    ?? throw new CellException(
                        $"Row {i + 1}",
                        $"it has no {columns[c]}, but other rows have.",
                        $"Fill in the {columns[c]} of every row, or leave the column out."
                    );
            if (i == from || !values.AsSpan().SequenceEqual(last))
                (rows, last) = (RowsOf(values), [.. values]);
            rows.Add(
                model.Bursts == BurstUse.PerRow
                    ? row with
                    {
                        Conditions = row.Conditions with { Burst = FormattableString.Invariant($"row {i + 1}") },
                    }
                    : row
            );
        }

        return curves;

        List<FrameCell> RowsOf(string[] labels)
        {
            var name = string.Join('\u001f', labels);
            if (!curves.TryGetValue(name, out var curve))
                curves[name] = curve = (new([.. columns.Zip(labels, KeyValuePair.Create)]), []);
            return curve.Rows;
        }
    }
}
