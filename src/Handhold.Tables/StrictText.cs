using System.Globalization;
using System.Text;

namespace Handhold.Tables;

/// <summary>
/// A table's text, rewritten on the way so that every quote mark means what a strict reader of separated values takes it to mean.
/// </summary>
/// <remarks>
/// A field is quoted when it begins with a quote mark and the next single one is followed by a separator or the end of the line (spaces
/// aside). Any other quote mark is a letter like any other: its field is quoted here, the mark doubled. Comment lines become empty lines, so
/// line numbers stay. Only lines that hold a quote mark are looked at letter by letter.
/// </remarks>
internal sealed class StrictText : TextReader
{
    private const int MostLines = 3;
    private const int NotQuoted = -1;
    private readonly LineSource _lines;
    private readonly TableOptions _options;
    private readonly ErrorList _errors;
    private ReadOnlyMemory<char> _ready;

    public StrictText(TextReader source, TableOptions options, ErrorList errors)
    {
        (_lines, _options, _errors) = (new(source, options, errors), options, errors);
        while (_lines.Next())
        {
            if (!_lines.IsComment && !_lines.Text.IsWhiteSpace())
            {
                Separator = TableHeader.SeparatorOf(_lines.Text);
                _lines.PutBack(_lines.Text.ToString());
                break;
            }
        }
        LinesBefore = _lines.Number;
    }

    /// <summary>What separates the columns: comma, semicolon or tab, whichever makes the header best known.</summary>
    public char Separator { get; } = ',';

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
        if (!_lines.Next())
        {
            return false;
        }
        var line = _lines.Text;
        if (_lines.IsComment)
        {
            _ready = "\n".AsMemory();
        }
        else
        {
            _lines.CheckDecoded();
            _ready = line.Contains('"') ? Mend(line.ToString()).AsMemory() : _lines.Memory;
        }
        return true;
    }

    /// <summary>The row that begins with this line, every quoted field closed and every other quote mark doubled in a quoted field.</summary>
    private string Mend(string text)
    {
        var first = _lines.Number;
        var mended = new StringBuilder(text.Length + 16);
        for (var at = 0; ; at++)
        {
            var start = PastSpaces(text, at);
            var end = start < text.Length && text[start] == '"' ? Close(ref text, start, first) : NotQuoted;
            if (end != NotQuoted)
            {
                mended.Append(text, start, end - start);
                at = PastSpaces(text, end);
            }
            else
            {
                end = at + EndOfField(text.AsSpan(at));
                var field = text[at..end];
                mended.Append(field.Contains('"', StringComparison.Ordinal) ? Quoted(field.Trim(' ')) : field);
                at = end;
            }
            if (at == text.Length || text[at] != Separator)
            {
                var rest = text.AsSpan(at);
                var lineBreak = LineSource.FirstLine(rest);
                _lines.PutBack(rest[lineBreak.Length..].ToString());
                return mended.Append(lineBreak).ToString();
            }
            mended.Append(Separator);
        }
    }

    /// <summary>Where the field that opens at <paramref name="start"/> ends, closing quote mark included.</summary>
    private int Close(ref string text, int start, int first)
    {
        for (var i = start + 1; ; )
        {
            var quote = text.IndexOf('"', i);
            if (quote < 0)
            {
                i = text.Length;
                text += MoreOf(text, start, first);
            }
            else if (quote + 1 < text.Length && text[quote + 1] == '"')
            {
                i = quote + 2;
            }
            else
            {
                var after = text.AsSpan(quote + 1).TrimStart(' ');
                return EndOfField(after) == 0 ? quote + 1 : NotQuoted;
            }
        }
    }

    /// <summary>The line after a field that is still open, or an error.</summary>
    private string MoreOf(string text, int start, int first)
    {
        var opened = first + LineSource.Breaks(text.AsSpan(0, start));
        var field = text.AsSpan(start);
        if (LineSource.Breaks(field) >= MostLines)
        {
            _errors.Fatal(
                opened,
                null,
                field,
                $"A quoted field opens here and runs over more than {MostLines.ToString(CultureInfo.InvariantCulture)} lines.",
                "Close the quote mark, or remove it: a quote mark inside a field, as in 2\", needs no quoting."
            );
        }
        if (!_lines.Next())
        {
            _errors.Fatal(opened, null, field, "A quoted field opens here and never closes.", "Close the quote mark, or remove it.");
        }
        _lines.CheckDecoded();
        if (text.Length + _lines.Text.Length > _options.MaxRowLength)
        {
            _lines.TooLong();
        }
        return _lines.Text.ToString();
    }

    /// <summary>A text as a quoted field.</summary>
    public static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static int PastSpaces(string text, int at) => text.Length - text.AsSpan(at).TrimStart(' ').Length;

    /// <summary>Characters up to the next separator, line break or end.</summary>
    private int EndOfField(ReadOnlySpan<char> text)
    {
        var end = text.IndexOfAny(Separator, '\r', '\n');
        return end < 0 ? text.Length : end;
    }
}
