using System.Text;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary>A file that was named on the command line: a table, or a saved fit when it starts with a brace.</summary>
internal sealed class InputFile
{
    private readonly string? _text;

    private InputFile(string name, string? text) => (Name, _text) = (name, text);

    /// <summary>The path as given, or "standard input".</summary>
    public string Name { get; }

    /// <summary>The JSON of a saved fit; null when the file is a table.</summary>
    public string? SavedFit => _text?.StartsWith('{') == true ? _text : null;

    public static InputFile Open(string path, Desk desk)
    {
        if (path == "-")
            return new("standard input", Whole(desk.Input, "standard input"));
        if (Directory.Exists(path))
            throw new InputException(
                new(
                    "badInput",
                    $"{path} is a folder.",
                    $"Name a table; `handhold import {path} --out frames.csv` makes one of photographs."
                )
                {
                    File = path,
                    Value = path,
                }
            );
        if (!File.Exists(path))
            throw new InputException(
                new("fileNotFound", $"There is no file {path}.", "Check the path; - reads standard input.") { File = path, Value = path }
            );
        using var stream = File.OpenRead(path);
        using var reader = new StreamReader(stream);
        return new(path, reader.Peek() == '{' || !stream.CanSeek ? Whole(reader, path) : null);
    }

    public FrameTable Table(TableOptions options, CancellationToken cancellation)
    {
        if (_text is null)
            return TableReader.Read(Name, options, cancellation: cancellation);
        using var reader = new StringReader(_text);
        return TableReader.Read(reader, Name, options, cancellation: cancellation);
    }

    /// <summary>What cannot be read twice is read once, and not without end.</summary>
    private static string Whole(TextReader reader, string name)
    {
        const int chunk = 1 << 16;
        var (text, buffer) = (new StringBuilder(), new char[chunk]);
        while (reader.ReadBlock(buffer) is var length and > 0)
        {
            if (text.Append(buffer, 0, length).Length > Handhold.SavedFit.LargestText)
                throw new InputException(
                    new(
                        "badInput",
                        FormattableString.Invariant($"This is longer than {Handhold.SavedFit.LargestText} characters."),
                        "Save a table to a file and name that; longer fits cannot be read."
                    )
                    {
                        File = name,
                    }
                );
        }

        return text.ToString();
    }
}
