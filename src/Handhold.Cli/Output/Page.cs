using Spectre.Console;

namespace Handhold.Cli;

/// <summary>Text for people: sentences and small tables. Wrapped at words in a terminal, one line each when redirected; never a colour or a control code.</summary>
internal sealed class Page(TextWriter writer, int? width)
{
    private const string Indent = "  ";
    private const int Unwrapped = 10_000;
    private const int WidestText = 100;

    public void Blank() => writer.WriteLine();

    /// <summary>A sentence or several, after <paramref name="mark"/>; lines that follow stand below the text.</summary>
    public void Text(string text, string mark = "")
    {
        var room = width is { } columns ? Math.Min(columns, WidestText) : int.MaxValue;
        var line = mark;
        foreach (var word in Harmless(text).Split(' '))
        {
            if (line.Length > mark.Length && line.Length + 1 + word.Length > room)
            {
                writer.WriteLine(line);
                line = new string(' ', mark.Length);
            }

            line += line.Length > mark.Length ? " " + word : word;
        }

        writer.WriteLine(line);
    }

    /// <summary>A table in our own plain look: aligned columns, a header, no lines.</summary>
    /// <param name="header">Names of the columns; empty for a table without a header.</param>
    /// <param name="rows">Cells, as many in each row.</param>
    public void Table(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        var all = rows.ToArray();
        var table = new Table { Border = TableBorder.None, ShowHeaders = header.Count > 0 };
        for (var column = 0; column < all[0].Count; column++)
            table.AddColumn(
                new TableColumn(new Text(header.Count > 0 ? header[column] : "")) { Padding = new(0, 0, 3, 0), NoWrap = width is null }
            );
        foreach (var row in all)
            table.AddRow(row.Select(cell => new Text(Harmless(cell))));
        using var drawn = new StringWriter();
        var console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Ansi = AnsiSupport.No,
                ColorSystem = ColorSystemSupport.NoColors,
                Interactive = InteractionSupport.No,
                Out = new AnsiConsoleOutput(drawn),
            }
        );
        console.Profile.Width = width is { } columns ? columns - Indent.Length : Unwrapped;
        console.Write(table);
        foreach (var line in drawn.ToString().TrimEnd().Split('\n'))
            writer.WriteLine(Indent + line.TrimEnd());
    }

    /// <summary>Labels come from files, and terminals obey control characters.</summary>
    private static string Harmless(string text) => string.Concat(text.Select(c => char.IsControl(c) ? '\uFFFD' : c));
}
