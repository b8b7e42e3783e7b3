using System.Collections.Immutable;
using System.Globalization;
using nietras.SeparatedValues;

namespace Handhold.Tables;

/// <summary>Makes a cell of frames from each row of one table.</summary>
internal sealed class RowReader(TableHeader header, bool decimalComma, TableOptions options, ErrorList errors)
{
    private readonly ExposureColumn _exposure = new(header, errors);
    private readonly int _frames = header.IndexOf("frames");
    private readonly int _keepers = header.IndexOf("keepers");
    private readonly int _unjudged = header.IndexOf("unjudged");
    private readonly int _keeper = header.IndexOf("keeper");
    private readonly int _grade = header.IndexOf("grade");

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

    private FrameCell? ReadCounts(in TableRow row, ShutterSpeed? exposure, Conditions conditions)
    {
        var frames = Count(row, _frames);
        var keepers = Count(row, _keepers);
        var unjudged = _unjudged < 0 || row.IsBlank(_unjudged) ? 0 : Count(row, _unjudged);
        if (exposure is not { } speed || frames is null || keepers is null || unjudged is null)
        {
            return null;
        }
        if (keepers > frames)
        {
            row.Wrong(
                _keepers,
                string.Create(CultureInfo.InvariantCulture, $"{keepers} keepers in {frames} frames is impossible."),
                "Count each frame once."
            );
            return null;
        }
        if (frames == 0 && unjudged == 0)
        {
            row.Wrong(_frames, "The cell holds no frames.", "Leave the row out, or count its frames.");
            return null;
        }
        return row.Try(
            null,
            () =>
                FrameTable.Create(new FrameCell(speed, frames.Value, keepers.Value) { Unjudged = unjudged.Value, Conditions = conditions })[
                    0
                ],
            null
        );
    }

    private static int? Count(in TableRow row, int index)
    {
        if (row.IsBlank(index))
        {
            row.Wrong(index, "The count is missing.", "Write it in every row, 0 for none.");
            return null;
        }
        if (row.Whole(index) is not < 0 and var count)
        {
            return count;
        }
        row.Wrong(index, "A count cannot be below 0.", "Write a whole number from 0 up.");
        return null;
    }

    private FrameCell? ReadFrame(in TableRow row, ShutterSpeed? exposure, Conditions conditions)
    {
        var verdict = _keeper < 0 ? Verdict.NotJudged : ReadVerdict(row);
        var grade = _grade < 0 ? null : row.Whole(_grade);
        if (exposure is not { } speed || verdict is not { } known)
        {
            return null;
        }
        var frame = row.Try(
            grade is null ? null : _grade,
            () => FrameTable.FromFrames([new(speed, known) { Grade = grade }], options.KeeperFromGrade)[0],
            null
        );
        return frame is null ? null : row.Try(null, () => FrameTable.Create(frame with { Conditions = conditions })[0], null);
    }

    private Verdict? ReadVerdict(in TableRow row)
    {
        switch (row.Cell(_keeper).ToString().ToUpperInvariant())
        {
            case "YES" or "TRUE" or "1":
                return Verdict.Keeper;
            case "NO" or "FALSE" or "0":
                return Verdict.Reject;
            case "":
                return Verdict.NotJudged;
            default:
                row.Wrong(
                    _keeper,
                    "This is no verdict.",
                    "Write yes or no, true or false, 1 for a keeper or 0 for a reject; leave it empty for a frame not judged."
                );
                return null;
        }
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
