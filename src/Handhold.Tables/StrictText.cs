using System.Buffers;

namespace Handhold.Tables;

/// <summary>A table's text, rewritten on the way so that a strict reader of separated values understands it.</summary>
/// <remarks>
/// Stray quote marks are mended, spaces around fields dropped, and comment lines become empty lines, so that line numbers stay. Only lines
/// that hold a quote mark, or a space at the end of a field, are looked at letter by letter.
/// </remarks>
internal sealed class StrictText : TextReader
{
    private readonly LineSource _lines;
    private readonly QuoteMender _mender;
    private readonly SearchValues<string> _mends;
    private ReadOnlyMemory<char> _ready;

    public StrictText(TextReader source, TableOptions options, ErrorList errors)
    {
        _lines = new(source, options, errors);
        while (_lines.Next())
        {
            if (!_lines.IsComment && !_lines.Text.Trim(" ,;\t\r\n").IsEmpty)
            {
                Separator = TableHeader.SeparatorOf(_lines.Text);
                _lines.PutBack(_lines.Text.ToString());
                break;
            }
        }
        LinesBefore = _lines.Number;
        _mends = SearchValues.Create(["\"", $" {Separator}", $"{Separator} ", " \r", " \n"], StringComparison.Ordinal);
        _mender = new(_lines, Separator, options, errors);
    }

    /// <summary>What separates the columns: comma, semicolon or tab, whichever makes the header best known.</summary>
    public char Separator { get; } = ',';

    /// <summary>Whether an error ended the text early.</summary>
    public bool IsBroken { get; private set; }

    /// <summary>Lines before the header, which are not handed on.</summary>
    public int LinesBefore { get; }

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        var filled = 0;
        while (filled < buffer.Length && (_ready.Length > 0 || Prepare()))
        {
            var part = _ready.Span[..Math.Min(_ready.Length, buffer.Length - filled)];
            part.CopyTo(buffer[filled..]);
            _ready = _ready[part.Length..];
            filled += part.Length;
        }
        return filled;
    }

    private bool Prepare()
    {
        try
        {
            return !IsBroken && PrepareLine();
        }
        catch (TableException)
        {
            IsBroken = true; // its error is listed already; the rows before it may have others
            return false;
        }
    }

    private bool PrepareLine()
    {
        if (!_lines.Next())
        {
            return false;
        }
        if (_lines.IsComment)
        {
            _ready = "\n".AsMemory();
        }
        else
        {
            _lines.CheckDecoded();
            _ready = NeedsMending(_lines.Text) ? _mender.MendRow().AsMemory() : _lines.Memory;
        }
        return true;
    }

    /// <summary>Whether a line holds a quote mark, or a space at the end of a field.</summary>
    private bool NeedsMending(ReadOnlySpan<char> line) => line.ContainsAny(_mends) || line[0] == ' ' || line[^1] == ' ';
}
