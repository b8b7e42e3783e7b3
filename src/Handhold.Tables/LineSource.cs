using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Handhold.Tables;

/// <summary>The lines of a text, line breaks included, with their numbers and within limits.</summary>
internal sealed class LineSource(TextReader source, TableOptions options, ErrorList errors)
{
    private readonly char[] _chunk = new char[16384];
    private char[] _line = new char[1024];
    private string _putBack = "";
    private int _at;
    private int _end;
    private int _length;
    private long _characters;

    /// <summary>The number of the line at hand, from 1; 0 before the first.</summary>
    public int Number { get; private set; }

    public ReadOnlyMemory<char> Memory => _line.AsMemory(0, _length);

    public ReadOnlySpan<char> Text => Memory.Span;

    public bool IsComment => _length > 0 && _line[0] == '#';

    /// <summary>Moves to the next line; false at the end.</summary>
    public bool Next()
    {
        _length = 0;
        Number++;
        if (_putBack.Length > 0)
        {
            Append(FirstLine(_putBack));
            _putBack = _putBack[_length..];
            return true;
        }
        while (Available())
        {
            var rest = _chunk.AsSpan(_at.._end);
            var part = rest.IndexOfAny('\r', '\n') is var found && found < 0 ? rest : rest[..(found + 1)];
            Append(part);
            _at += part.Length;
            if (found >= 0)
            {
                if (_line[_length - 1] == '\r' && Available() && _chunk[_at] == '\n')
                {
                    Append("\n");
                    _at++;
                }
                return true;
            }
        }
        Number -= _length > 0 ? 0 : 1;
        return _length > 0;
    }

    /// <summary>Makes these whole lines, just read, the next ones.</summary>
    public void PutBack(string lines)
    {
        _putBack = lines + _putBack;
        for (ReadOnlySpan<char> rest = lines; rest.Length > 0; rest = rest[FirstLine(rest).Length..])
        {
            Number--;
        }
    }

    public static ReadOnlySpan<char> FirstLine(ReadOnlySpan<char> text)
    {
        var found = text.IndexOfAny('\r', '\n');
        return found < 0 ? text
            : text[found..].StartsWith("\r\n") ? text[..(found + 2)]
            : text[..(found + 1)];
    }

    /// <summary>Line breaks in a text.</summary>
    public static int Breaks(ReadOnlySpan<char> text)
    {
        var breaks = 0;
        for (var found = text.IndexOfAny('\r', '\n'); found >= 0; found = text.IndexOfAny('\r', '\n'))
        {
            text = text[FirstLine(text).Length..];
            breaks++;
        }
        return breaks;
    }

    /// <summary>Refuses a line that was not decoded rightly: it holds U+0000, or U+FFFD, which stands for bytes that mean nothing.</summary>
    public void CheckDecoded()
    {
        var bad = Text.IndexOfAny('\0', '\uFFFD');
        if (bad >= 0)
        {
            var (message, remedy) =
                Text[bad] == '\0'
                    ? (
                        "The line holds the character U+0000: the file is not text, or is UTF-16 without a byte order mark.",
                        "Save it as UTF-8."
                    )
                    : ("The line holds bytes that are not UTF-8.", "Save the file as UTF-8, in a spreadsheet \"CSV UTF-8\".");
            errors.Fatal(Number, null, Text[Math.Max(0, bad - 10)..], message, remedy);
        }
    }

    [DoesNotReturn]
    public void TooLong() =>
        errors.Fatal(
            Number,
            null,
            Text,
            string.Create(CultureInfo.InvariantCulture, $"The row has more than {options.MaxRowLength} characters."),
            "Check the line breaks and quote marks, or raise the limit MaxRowLength."
        );

    private void Append(ReadOnlySpan<char> part)
    {
        if (_length + part.Length > options.MaxRowLength)
        {
            TooLong();
        }
        if (_length + part.Length > _line.Length)
        {
            Array.Resize(ref _line, Math.Max(2 * _line.Length, _length + part.Length));
        }
        part.CopyTo(_line.AsSpan(_length));
        _length += part.Length;
    }

    private bool Available()
    {
        if (_at < _end)
        {
            return true;
        }
        var first = _characters == 0;
        (_at, _end) = (0, source.Read(_chunk));
        _characters += _end;
        if (_characters > options.MaxCharacters)
        {
            errors.Fatal(
                Number,
                null,
                "",
                string.Create(CultureInfo.InvariantCulture, $"The file has more than {options.MaxCharacters} characters."),
                "Split it, or raise the limit MaxCharacters."
            );
        }
        if (first && _end > 0 && _chunk[0] == '\uFEFF')
        {
            _at = 1;
            return _at < _end || Available();
        }
        return _end > 0;
    }
}
