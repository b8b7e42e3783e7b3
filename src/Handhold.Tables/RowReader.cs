using System.Collections.Immutable;
using System.Globalization;
using nietras.SeparatedValues;

namespace Handhold.Tables;

/// <summary>Makes a cell of frames from each row of one table.</summary>
internal sealed partial class RowReader(TableHeader header, bool decimalComma, TableOptions options, ErrorList errors)
{
    private readonly ExposureColumn _exposure = new(header, errors);
    private readonly int _frames = header.IndexOf("frames");
    private readonly int _keepers = header.IndexOf("keepers");
    private readonly int _unjudged = header.IndexOf("unjudged");
    private readonly int _keeper = header.IndexOf("keeper");
    private readonly int _grade = header.IndexOf("grade");
    private readonly int _second = header.IndexOf("second_verdict");
    private readonly int[] _looks = [header.IndexOf("kept_twice"), header.IndexOf("kept_once"), header.IndexOf("kept_never")];

    /// <summary>The row's frames; null when the row has an error.</summary>
    public FrameCell? Read(SepReader.Row split, int line)
    {
        var before = errors.Count;
        var row = new TableRow(split, line, header, decimalComma, errors);
        if (!HasShape(split, row))
        {
            return null;
        }
        var exposure = _exposure.Read(row);
        var conditions = ReadConditions(row);
        var cell = _frames >= 0 ? ReadCounts(row, exposure, conditions) : ReadFrame(row, exposure, conditions);
        return errors.Count == before ? cell : null;
    }

    /// <summary>The row's conditions; null when the row has an error.</summary>
    public TableNote? ReadNote(SepReader.Row split, int line)
    {
        var before = errors.Count;
        var row = new TableRow(split, line, header, decimalComma, errors);
        if (!HasShape(split, row))
        {
            return null;
        }
        var conditions = ReadConditions(row);
        return errors.Count == before ? new(line, conditions) : null;
    }

    /// <summary>Says what only the whole table shows.</summary>
    public void Finish() => _exposure.Finish();

    private bool HasShape(SepReader.Row split, in TableRow row)
    {
        if (split.ColCount != header.Names.Length)
        {
            errors.Add(
                row.Line,
                null,
                string.Join(' ', TableReader.Texts(split)),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The row has {split.ColCount} cells where the header has {header.Names.Length} columns."
                ),
                "Leave cells empty rather than out, and quote a cell that holds the separator."
            );
            return false;
        }
        for (var i = 0; i < split.ColCount; i++)
        {
            if (split[i].Span.Length > options.MaxFieldLength)
            {
                row.Wrong(
                    i,
                    string.Create(CultureInfo.InvariantCulture, $"The cell has more than {options.MaxFieldLength} characters."),
                    "Shorten it, check the quote marks, or raise the limit MaxFieldLength."
                );
                return false;
            }
        }
        foreach (var i in header.Nameless)
        {
            if (!row.IsBlank(i))
            {
                row.Wrong(i, "The column of this cell has no name.", "Name it in the header, or empty the cell.");
                return false;
            }
        }
        return true;
    }

    private Conditions ReadConditions(in TableRow row)
    {
        var conditions = Conditions.None;
        foreach (var (column, index) in header.Conditions)
        {
            conditions = column.Set(conditions, row, index);
        }
        if (header.Others.IsEmpty)
        {
            return conditions;
        }
        var others = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (name, index) in header.Others)
        {
            if (row.Text(index) is { } text)
            {
                others.Add(name, text);
            }
        }
        return conditions with { Others = others.ToImmutable() };
    }
}
