using System.Globalization;
using System.Text;

namespace Handhold.Tables;

/// <summary>
/// Rewrites rows so that every quote mark means what a strict reader of separated values takes it to mean, without the spaces around fields.
/// </summary>
/// <remarks>
/// A field is quoted when it begins with a quote mark and the next single one is followed by a separator or the end of the line, spaces
/// aside. Any other quote mark is a letter like any other: its field is quoted here, the mark doubled.
/// </remarks>
internal sealed class QuoteMender(LineSource lines, char separator, TableOptions options, ErrorList errors)
{
    /// <summary>Most lines of a quoted field: beyond, a stray mark is likelier than so long a text.</summary>
    public const int MostLines = 3;

    private const int NotQuoted = -1;

    private string _text = ""; // what is left of the row, and of lines read to find a closing quote mark
    private int _line; // the number of its first line
    private int _at; // where in it the next field begins

    /// <summary>A text as a quoted field.</summary>
    public static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    /// <summary>The row that begins with the line at hand, mended.</summary>
    public string MendRow()
    {
        (_text, _line, _at) = (lines.Text.ToString(), lines.Number, 0);
        var row = new StringBuilder(_text.Length + 16);
        while (true)
        {
            row.Append(MendField(row.Length));
            if (_at == _text.Length || _text[_at] != separator)
            {
                var rest = _text.AsSpan(_at);
                var lineBreak = LineSource.FirstLine(rest);
                lines.PutBack(rest[lineBreak.Length..].ToString());
                return row.Append(lineBreak).ToString();
            }
            row.Append(separator);
            _at++;
        }
    }

    /// <summary>The field at hand, mended; moves past it.</summary>
    private string MendField(int before)
    {
        var mark = PastSpaces(_at);
        if (mark < _text.Length && _text[mark] == '"')
        {
            _at = mark;
            if (ClosingEnd(before) is var end && end != NotQuoted)
            {
                var quoted = _text[_at..end];
                _at = PastSpaces(end);
                return quoted;
            }
        }
        var length = EndOfField(_text.AsSpan(_at));
        var field = _text.AsSpan(_at, length).Trim(' ').ToString();
        _at += length;
        return field.Contains('"', StringComparison.Ordinal) ? Quoted(field) : field;
    }

    /// <summary>The place after the mark that closes the field at hand, which begins with one.</summary>
    private int ClosingEnd(int before)
    {
        for (var from = _at + 1; ; )
        {
            var mark = _text.IndexOf('"', from);
            if (mark < 0)
            {
                from = _text.Length - _at;
                ReadOn(before);
            }
            else if (mark + 1 < _text.Length && _text[mark + 1] == '"')
            {
                from = mark + 2;
            }
            else
            {
                return EndOfField(_text.AsSpan(PastSpaces(mark + 1))) == 0 ? mark + 1 : NotQuoted;
            }
        }
    }

    /// <summary>Drops what lies before the field at hand, which is still open, and adds the next line; an error when that cannot be.</summary>
    private void ReadOn(int before)
    {
        _line += LineSource.Breaks(_text.AsSpan(0, _at));
        (_text, _at) = (_text[_at..], 0);
        if (LineSource.Breaks(_text) >= MostLines)
        {
            errors.Fatal(
                _line,
                null,
                _text,
                string.Create(CultureInfo.InvariantCulture, $"A quoted field opens here and runs over more than {MostLines} lines."),
                "Close the quote mark, or remove it: a quote mark inside a field, as in 2\", needs no quoting."
            );
        }
        if (!lines.Next())
        {
            errors.Fatal(_line, null, _text, "A quoted field opens here and never closes.", "Close the quote mark, or remove it.");
        }
        lines.CheckDecoded();
        if (before + _text.Length + lines.Text.Length > options.MaxRowLength)
        {
            lines.TooLong();
        }
        _text = string.Concat(_text, lines.Text);
    }

    private int PastSpaces(int at) => _text.Length - _text.AsSpan(at).TrimStart(' ').Length;

    /// <summary>Characters up to the next separator, line break or end.</summary>
    private int EndOfField(ReadOnlySpan<char> text)
    {
        var end = text.IndexOfAny(separator, '\r', '\n');
        return end < 0 ? text.Length : end;
    }
}
