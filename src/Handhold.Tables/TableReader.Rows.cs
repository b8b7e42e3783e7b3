using System.Collections.Immutable;
using System.Globalization;
using nietras.SeparatedValues;

namespace Handhold.Tables;

public static partial class TableReader
{
    private const int ReportEvery = 1000;

    /// <summary>What becomes of a row; null where it has an error.</summary>
    private delegate T? ReadRow<T>(RowReader reader, SepReader.Row row, int line);

    /// <summary>The cells of a row as text.</summary>
    internal static ImmutableArray<string> Texts(SepReader.Row row)
    {
        var texts = ImmutableArray.CreateBuilder<string>(row.ColCount);
        for (var i = 0; i < row.ColCount; i++)
        {
            texts.Add(SpreadsheetText.Restore(row[i].ToString().Trim()));
        }
        return texts.MoveToImmutable();
    }

    private static List<T> ReadRows<T>(
        TextReader source,
        TableOptions options,
        ErrorList errors,
        TableKind kind,
        ReadRow<T> read,
        IProgress<int>? progress,
        CancellationToken cancellation
    )
        where T : class
    {
        using var text = new StrictText(source, options, errors);
        using var rows = Split(text);
        RowReader? reader = null;
        var all = new List<T>();
        var count = 0;
        var nextLine = text.LinesBefore + 1;
        foreach (var row in rows)
        {
            cancellation.ThrowIfCancellationRequested();
            var line = nextLine;
            nextLine = text.LinesBefore + row.LineNumberToExcl; // LineNumberFrom is one too high in the first row
            CheckLimit(row.ColCount, options.MaxColumns, "columns in this row", "MaxColumns", line, errors);
            if (IsEmpty(row))
            {
                continue;
            }
            if (reader is null)
            {
                reader = new(new TableHeader(Texts(row), line, kind, options, errors), text.Separator != ',', options, errors);
                continue;
            }
            CheckLimit(++count, options.MaxRows, "rows", "MaxRows", line, errors);
            if (read(reader, row, line) is { } item)
            {
                all.Add(item);
            }
            if (count % ReportEvery == 0)
            {
                progress?.Report(count);
            }
        }
        if (!text.IsBroken)
        {
            CheckNotEmpty(reader, count, kind, text.LinesBefore + 1, errors);
            reader?.Finish();
        }
        errors.ThrowIfAny();
        return all;
    }

    private static SepReader Split(StrictText text) =>
        Sep.New(text.Separator)
            .Reader(o =>
                o with
                {
                    HasHeader = false,
                    Unescape = true,
                    DisableColCountCheck = true,
                    CultureInfo = CultureInfo.InvariantCulture,
                    CreateToString = SepToString.OnePool(),
                }
            )
            .From(text);

    private static void CheckLimit(int count, int most, string what, string name, int line, ErrorList errors)
    {
        if (count > most)
        {
            errors.Fatal(
                line,
                null,
                "",
                string.Create(CultureInfo.InvariantCulture, $"There are more than {most} {what}."),
                $"Check the separators and line breaks, split the file, or raise the limit {name}."
            );
        }
    }

    private static void CheckNotEmpty(RowReader? reader, int rows, TableKind kind, int headerLine, ErrorList errors)
    {
        if (reader is null)
        {
            errors.Add(
                1,
                null,
                "",
                "The file holds no header row.",
                "Begin it with the names of the columns, such as exposure,frames,keepers."
            );
        }
        else if (rows == 0 && kind == TableKind.Frames)
        {
            errors.Add(headerLine, null, "", "There are no rows below the header.", "Add a row a frame, or a row a cell of equal frames.");
        }
    }

    private static bool IsEmpty(SepReader.Row row)
    {
        for (var i = 0; i < row.ColCount; i++)
        {
            if (!row[i].Span.IsWhiteSpace())
            {
                return false;
            }
        }
        return true;
    }
}
