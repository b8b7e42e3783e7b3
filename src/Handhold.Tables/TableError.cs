using System.Globalization;

namespace Handhold.Tables;

/// <summary>What is wrong in one place of a table, and what to do about it.</summary>
public sealed class TableError
{
    internal TableError(string file, int line, string? column, string value, string message, string remedy) =>
        (File, Line, Column, Value, Message, Remedy) = (file, line, column, value, message, remedy);

    /// <summary>The file's name as it was given.</summary>
    public string File { get; }

    /// <summary>The line in the file, from 1; for a row of several lines its first.</summary>
    public int Line { get; }

    /// <summary>The column's name as the header spells it; null when the whole row or file is meant.</summary>
    public string? Column { get; }

    /// <summary>What stands there, at most 40 characters, control characters escaped; empty when nothing stands there.</summary>
    public string Value { get; }

    /// <summary>What is wrong, a sentence.</summary>
    public string Message { get; }

    /// <summary>What to do, a sentence.</summary>
    public string Remedy { get; }

    /// <summary>Place, value, problem and remedy on one line.</summary>
    public override string ToString()
    {
        var place = string.Create(CultureInfo.InvariantCulture, $"{Shown.From(File, 200)}, line {Line}");
        place += Column is null ? "" : $", column {Shown.From(Column)}";
        place += Value.Length == 0 ? "" : $", value '{Value}'";
        return $"{place}: {Message} {Remedy}";
    }
}
