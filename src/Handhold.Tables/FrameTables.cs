namespace Handhold.Tables;

/// <summary>Frame tables out of any records, and cells that are pooled and merged.</summary>
public static class FrameTables
{
    /// <summary>A table of any records, one cell each, in their order.</summary>
    /// <param name="records">The records.</param>
    /// <param name="map">What a record counts.</param>
    /// <typeparam name="T">Anything.</typeparam>
    /// <exception cref="TableException">Records are wrong: up to 20 errors, each with the record's number, from 1, as its line.</exception>
    public static FrameTable ToFrameTable<T>(this IEnumerable<T> records, Func<T, FrameCell> map)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(map);
        ErrorList errors = new("records");
        List<FrameCell> cells = [];
        foreach (var (i, record) in records.Index())
        {
            try
            {
                cells.Add(FrameTable.Create(map(record))[0]);
            }
            catch (CellException refused)
            {
                errors.Add(i + 1, null, record?.ToString() ?? "", $"{refused.Place}: {refused.Problem}", refused.Remedy);
            }
        }

        errors.ThrowIfAny();
        return FrameTable.Create([.. cells]);
    }

    /// <summary>A table of any records, one frame each, in their order.</summary>
    /// <param name="records">The records.</param>
    /// <param name="map">What a record tells of a frame.</param>
    /// <param name="keeperFromGrade">The lowest grade of a keeper, where frames are graded.</param>
    /// <typeparam name="T">Anything.</typeparam>
    /// <exception cref="TableException">Records are wrong: up to 20 errors, each with the record's number, from 1, as its line.</exception>
    public static FrameTable ToFrameTable<T>(this IEnumerable<T> records, Func<T, ShotFrame> map, int? keeperFromGrade = null) =>
        records.ToFrameTable(record => FrameTable.FromFrames([map(record)], keeperFromGrade)[0]);

    /// <summary>The same counts with one cell for each exposure and conditions, in an order that depends on nothing else.</summary>
    /// <remarks>Exposures are equal when their seconds are equal to the last bit. The likelihood of any model is the same before and after.</remarks>
    /// <param name="table">The frames.</param>
    public static FrameTable Pooled(this FrameTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var cells = table
            .GroupBy(c => (c.Exposure, c.Conditions))
            .Select(g => new FrameCell(g.Key.Exposure, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))
            {
                Unjudged = g.Sum(c => c.Unjudged),
                SecondLooks = g.Aggregate(default(SecondLooks), (looks, c) => looks + c.SecondLooks),
                Conditions = g.Key.Conditions,
            })
            .OrderBy(c => c.Exposure)
            .ThenBy(c => Label(c.Conditions), StringComparer.Ordinal);
        return FrameTable.Create([.. cells]);
    }

    /// <summary>The cells of both tables, pooled. Neither the order nor the grouping of merges matters.</summary>
    /// <remarks>Labels mean the same in both tables: name sessions and bursts so that no two share a name, such as by their date.</remarks>
    /// <param name="table">The one table.</param>
    /// <param name="other">The other.</param>
    /// <exception cref="OverflowException">More than 2 147 483 647 frames in all.</exception>
    public static FrameTable Merge(this FrameTable table, FrameTable other)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(other);
        return table.Concat(other).Pooled();
    }

    /// <summary>All conditions as one text, equal only where they are equal.</summary>
    private static string Label(Conditions conditions) =>
        string.Join(
            '\u001f',
            [
                .. Conditions.ColumnNames.Select(name => conditions[name] is { } value ? $"1{value}" : "0"),
                .. conditions.Others.SelectMany(o => new[] { o.Key, o.Value }),
            ]
        );
}
