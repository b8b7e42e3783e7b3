using System.Text;

namespace Handhold.Tables;

/// <summary>Reads tables of judged frames from separated values, the same on every machine whatever its culture.</summary>
/// <remarks>
/// <para>
/// A header row, then a row a frame (<c>keeper</c>, or <c>grade</c> with <see cref="TableOptions.KeeperFromGrade"/>) or a row a cell of equal
/// frames (<c>frames</c>, <c>keepers</c>, <c>unjudged</c>), each with its <c>exposure</c> or <c>exposure_s</c>. Columns are separated by comma,
/// semicolon or tab, whichever fits the header. UTF-8, or what the byte order mark says. Lines that begin with # are comments, empty rows
/// are skipped. Numbers have a decimal point; with semicolons or tabs a decimal comma is understood too.
/// </para>
/// <para>
/// A column without a meaning of its own is kept by its name in <see cref="Conditions.Others"/>, so a misspelt one would be kept unseen:
/// a name one letter from a known one, or two when that has six letters or more, is an error.
/// </para>
/// </remarks>
public static partial class TableReader
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">The file, which errors name as given here.</param>
    /// <param name="options">Threshold of grades and limits.</param>
    /// <param name="progress">Told the number of rows read, every thousand.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="TableException">The table is wrong: up to 20 errors with line, column, value and remedy.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static FrameTable Read(
        string path,
        TableOptions? options = null,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default
    )
    {
        using var stream = File.OpenRead(path);
        return Read(stream, path, options, progress, cancellation);
    }

    /// <summary>Reads a stream, which stays open.</summary>
    /// <param name="stream">UTF-8, or what its byte order mark says.</param>
    /// <param name="name">What errors call it.</param>
    /// <param name="options">Threshold of grades and limits.</param>
    /// <param name="progress">Told the number of rows read, every thousand.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="TableException">The table is wrong: up to 20 errors with line, column, value and remedy.</exception>
    public static FrameTable Read(
        Stream stream,
        string name,
        TableOptions? options = null,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default
    )
    {
        using var text = new StreamReader(stream, Encoding.UTF8, detectEncodingFromByteOrderMarks: true, leaveOpen: true);
        return Read(text, name, options, progress, cancellation);
    }

    /// <summary>Reads text, which stays open.</summary>
    /// <param name="text">The table.</param>
    /// <param name="name">What errors call it.</param>
    /// <param name="options">Threshold of grades and limits.</param>
    /// <param name="progress">Told the number of rows read, every thousand.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="TableException">The table is wrong: up to 20 errors with line, column, value and remedy.</exception>
    public static FrameTable Read(
        TextReader text,
        string name,
        TableOptions? options = null,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(name);
        options ??= TableOptions.Default;
        options.Check();
        var errors = new ErrorList(name);
        return FrameTable.Create([
            .. ReadRows(text, options, errors, TableKind.Frames, (reader, row, line) => reader.Read(row, line), progress, cancellation),
        ]);
    }
}
