using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Tables;

/// <summary>Writes tables of judged frames as comma-separated values that <see cref="TableReader"/> reads back to an equal table.</summary>
/// <remarks>
/// UTF-8, a row a cell: <c>exposure</c> (as <c>1/60 s</c>, which no spreadsheet takes for a date), <c>frames</c>, <c>keepers</c>,
/// <c>unjudged</c> where there are any, <c>kept_twice</c>, <c>kept_once</c> and <c>kept_never</c> where frames were judged twice, then the conditions recorded, those with a name of their own first. Numbers are invariant and lose
/// nothing. Text that a spreadsheet would run as a formula gets a leading apostrophe, which the reader takes off again; numbers are never touched.
/// </remarks>
public static class TableWriter
{
    /// <summary>Writes a file, whole or not at all.</summary>
    /// <param name="table">The frames.</param>
    /// <param name="path">The file; one that exists is replaced.</param>
    /// <param name="spreadsheetSafe">False writes text as it is, also when it begins like a formula.</param>
    /// <exception cref="ArgumentException">A text could not be read back; the message names it.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(FrameTable table, string path, bool spreadsheetSafe = true)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var unfinished = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            using (var text = new StreamWriter(unfinished, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)))
            {
                Write(table, text, spreadsheetSafe);
            }
            File.Move(unfinished, path, overwrite: true);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    /// <summary>Writes text.</summary>
    /// <param name="table">The frames.</param>
    /// <param name="text">Where to; stays open.</param>
    /// <param name="spreadsheetSafe">False writes text as it is, also when it begins like a formula.</param>
    /// <exception cref="ArgumentException">A text could not be read back; the message names it.</exception>
    public static void Write(FrameTable table, TextWriter text, bool spreadsheetSafe = true)
    {
        ArgumentNullException.ThrowIfNull(table);
        WriteRows(table.Select(cell => new Row(cell, null)), ColumnsOf(table, Counts(table)), text, spreadsheetSafe);
    }

    /// <summary>Writes text with a row a frame, whose column <c>keeper</c> says <c>yes</c>, <c>no</c> or nothing: for people who go on judging.</summary>
    /// <param name="table">The frames; a cell of several becomes as many rows.</param>
    /// <param name="text">Where to; stays open.</param>
    /// <param name="spreadsheetSafe">False writes text as it is, also when it begins like a formula.</param>
    /// <exception cref="ArgumentException">A text could not be read back, or frames were judged twice; the message names it.</exception>
    public static void WriteFrames(FrameTable table, TextWriter text, bool spreadsheetSafe = true)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (table.FirstOrDefault(cell => cell.SecondLooks.Frames > 0) is { } twice)
        {
            throw new ArgumentException($"{twice}: frames judged twice do not fit a row a frame. Write the table with a row a cell.");
        }
        var rows =
            from cell in table
            from verdict in Enumerable
                .Repeat("yes", cell.Keepers)
                .Concat(Enumerable.Repeat("no", cell.Frames - cell.Keepers))
                .Concat(Enumerable.Repeat("", cell.Unjudged))
            select new Row(cell, verdict);
        WriteRows(rows, ColumnsOf(table, [new("keeper", false, row => row.Verdict)]), text, spreadsheetSafe);
    }

    private static void WriteRows(IEnumerable<Row> rows, ImmutableArray<Column> columns, TextWriter text, bool spreadsheetSafe)
    {
        ArgumentNullException.ThrowIfNull(text);
        WriteRow(text, columns.Select(c => Cell(c.Name, c.Name, isText: true, spreadsheetSafe)));
        foreach (var row in rows)
        {
            WriteRow(text, columns.Select(c => Cell(c.Name, c.Show(row), c.IsText, spreadsheetSafe)));
        }
    }

    private static ImmutableArray<Column> Counts(FrameTable table) =>
        [
            new("frames", false, row => Number(row.Cell.Frames)),
            new("keepers", false, row => Number(row.Cell.Keepers)),
            .. table.Unjudged > 0 ? [new Column("unjudged", false, row => Number(row.Cell.Unjudged))] : ImmutableArray<Column>.Empty,
            .. table.Any(c => c.SecondLooks.Frames > 0) ? Looks : [],
        ];

    private static ImmutableArray<Column> ColumnsOf(FrameTable table, ImmutableArray<Column> judged)
    {
        var others = table
            .SelectMany(c => c.Conditions.Others.Keys)
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .ToList();
        foreach (var name in others)
        {
            if (TableHeader.Fault(name) is { } fault)
            {
                throw new ArgumentException($"The column name '{Shown.From(name)}' {fault}. Rename it before writing.");
            }
        }
        if (others.GroupBy(n => n, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } same)
        {
            throw new ArgumentException($"The column names {string.Join(" and ", same)} differ in case only. Rename one before writing.");
        }
        return
        [
            new("exposure", false, row => row.Cell.Exposure.ToExactText() + " s"),
            .. judged,
            .. ConditionColumn
                .All.Where(known => table.Any(c => c.Conditions[known.Name] is not null))
                .Select(known => new Column(known.Name, known.IsText, row => row.Cell.Conditions[known.Name])),
            .. others.Select(name => new Column(name, true, row => row.Cell.Conditions.Others.GetValueOrDefault(name))),
        ];
    }

    private static ImmutableArray<Column> Looks { get; } =
    [
        new("kept_twice", false, row => Number(row.Cell.SecondLooks.KeptTwice)),
        new("kept_once", false, row => Number(row.Cell.SecondLooks.KeptOnce)),
        new("kept_never", false, row => Number(row.Cell.SecondLooks.KeptNever)),
    ];

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static void WriteRow(TextWriter text, IEnumerable<string> cells)
    {
        text.Write(string.Join(',', cells));
        text.Write('\n');
    }

    private static string Cell(string column, string? value, bool isText, bool spreadsheetSafe)
    {
        if (value is null || !isText)
        {
            return value ?? "";
        }
        var fault =
            LineSource.Breaks(value) >= QuoteMender.MostLines ? "has more than 3 lines"
            : value.EnumerateRunes().Any(r => r == Rune.ReplacementChar || r.Value == 0) ? "holds U+0000, U+FFFD or half a character"
            : null;
        if (fault is not null)
        {
            throw new ArgumentException(
                $"The text '{Shown.From(value)}' in column {Shown.From(column)} {fault}, and could not be read back. Change it before writing."
            );
        }
        var safe = spreadsheetSafe ? SpreadsheetText.Neutralise(value) : value;
        return safe.AsSpan().ContainsAny(",\"\r\n") || safe.Trim() != safe ? QuoteMender.Quoted(safe) : safe;
    }

    private sealed record Row(FrameCell Cell, string? Verdict);

    private sealed record Column(string Name, bool IsText, Func<Row, string?> Show);
}
