using System.Collections.Immutable;
using System.Text;

namespace Handhold.Tables;

public static partial class TableReader
{
    /// <summary>Reads a side table: a header row, then rows of conditions, by the same rules as tables of frames but without frames.</summary>
    /// <param name="path">The file, which errors name as given here.</param>
    /// <param name="options">Limits.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="TableException">The table is wrong, or has columns of frames: up to 20 errors with line, column, value and remedy.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static ImmutableArray<TableNote> ReadNotes(string path, TableOptions? options = null, CancellationToken cancellation = default)
    {
        using var text = new StreamReader(path, Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        options ??= TableOptions.Default;
        options.Check();
        return
        [
            .. ReadRows(
                text,
                options,
                new ErrorList(path),
                TableKind.Notes,
                (reader, row, line) => reader.ReadNote(row, line),
                progress: null,
                cancellation
            ),
        ];
    }
}
