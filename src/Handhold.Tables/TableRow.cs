using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using nietras.SeparatedValues;

namespace Handhold.Tables;

/// <summary>The cells of one row by place, read as what they should be; what they are not goes to the errors.</summary>
/// <param name="row">The row as split.</param>
/// <param name="line">Its first line in the file.</param>
/// <param name="header">The columns.</param>
/// <param name="decimalComma">Whether a comma may stand for the decimal point.</param>
/// <param name="errors">Where errors go.</param>
internal readonly ref struct TableRow(SepReader.Row row, int line, TableHeader header, bool decimalComma, ErrorList errors)
{
    private readonly SepReader.Row _row = row;

    public int Line => line;

    /// <summary>A label; null when the cell is blank.</summary>
    public string? Text(int index) =>
        !IsBlank(index) && SpreadsheetText.Restore(_row[index].ToString()) is var text && !string.IsNullOrWhiteSpace(text) ? text : null;

    /// <summary>A finite number; null when the cell is blank or wrong.</summary>
    public double? Number(int index)
    {
        if (!Pointed(index, out var cell))
        {
            return null;
        }
        if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number))
        {
            return number;
        }
        Wrong(
            index,
            "This is not a finite number.",
            "Write digits with a decimal point, and leave the cell empty when nothing was recorded."
        );
        return null;
    }

    /// <summary>A whole number; null when the cell is blank or wrong.</summary>
    public int? Whole(int index)
    {
        var cell = Cell(index);
        if (cell.IsEmpty)
        {
            return null;
        }
        if (int.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }
        Wrong(index, "This is not a whole number.", "Write digits only, up to 2147483647, without decimals or thousands separators.");
        return null;
    }

    /// <summary>The cell with a decimal point for its comma where commas are allowed; false when it is blank or wrong.</summary>
    public bool Pointed(int index, [NotNullWhen(true)] out string? cell)
    {
        cell = Cell(index).ToString();
        if (!cell.Contains(',', StringComparison.Ordinal))
        {
            return cell.Length > 0;
        }
        if (!decimalComma)
        {
            Wrong(index, "This number has a comma.", "Write a decimal point, or separate the columns by semicolons or tabs.");
            return false;
        }
        if (cell.Count(c => c is ',' or '.') > 1)
        {
            Wrong(index, "This number has several commas or points.", "Write it without thousands separators.");
            return false;
        }
        cell = cell.Replace(',', '.');
        return true;
    }

    /// <summary>What <paramref name="make"/> makes, or <paramref name="otherwise"/> and an error when it refuses.</summary>
    public T Try<T>(int? index, Func<T> make, T otherwise)
    {
        try
        {
            return make();
        }
        catch (CellException refused)
        {
            errors.Add(
                line,
                index is { } i ? header.Names[i] : null,
                index is { } j ? _row[j].Span : "",
                Sentence(refused.Problem),
                refused.Remedy
            );
            return otherwise;
        }
    }

    /// <summary>The cell without white space around it.</summary>
    public ReadOnlySpan<char> Cell(int index) => _row[index].Span.Trim();

    public bool IsBlank(int index) => Cell(index).IsEmpty;

    public void Wrong(int index, string message, string remedy) => errors.Add(line, header.Names[index], _row[index].Span, message, remedy);

    private static string Sentence(string problem) => char.ToUpperInvariant(problem[0]) + problem[1..];
}
