using System.Collections.Immutable;
using System.Globalization;
using Handhold.Photos;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary>What no photograph says of itself: columns that are set for all, or by a side table for those of a setup, a folder, a file or a time.</summary>
internal sealed class PhotoNotes
{
    private static readonly ImmutableArray<string> s_times = ["yyyy-MM-dd", "yyyy-MM-dd HH:mm", "yyyy-MM-dd HH:mm:ss"];

    /// <summary>Columns that say which photographs a row is for.</summary>
    private static readonly ImmutableArray<string> s_choosing = ["setup", "photo", "folder", "from", "until"];

    private readonly Conditions _all;
    private readonly ImmutableArray<Row> _rows;

    private PhotoNotes(Conditions all, ImmutableArray<Row> rows) => (_all, _rows) = (all, rows);

    /// <param name="all">Columns and values for every photograph.</param>
    /// <param name="file">The side table, if there is one.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static PhotoNotes Read(Conditions all, string? file, CancellationToken cancellation)
    {
        if (file is null)
            return new(all, []);
        if (!File.Exists(file))
            throw new InputException(new("fileNotFound", $"There is no file {file}.", "Check the path.") { File = file, Value = file });
        return new(all, [.. TableReader.ReadNotes(file, cancellation: cancellation).Select(note => new Row(file, note))]);
    }

    /// <summary>A photograph's conditions: what it recorded, over it what holds for all, over that the rows that fit, later ones last.</summary>
    public Conditions Of(Photo photo) =>
        _rows.Where(row => row.Fits(photo)).Select(row => row.Says).Prepend(_all).Aggregate(photo.Frame.Conditions, Over);

    /// <summary>Lines of the side table that fit no photograph.</summary>
    public ImmutableArray<int> Idle(PhotoImport import) => [.. _rows.Where(row => !import.Photos.Any(row.Fits)).Select(row => row.Line)];

    private static Conditions Over(Conditions below, Conditions above) =>
        Conditions
            .ColumnNames.Concat(above.Others.Keys)
            .Where(column => above[column] is not null)
            .Aggregate(below, (conditions, column) => conditions.With(column, above[column]));

    private sealed class Row
    {
        private readonly string? _setup;
        private readonly string? _place;
        private readonly DateTime? _from;
        private readonly DateTime? _until;

        public Row(string file, TableNote note)
        {
            Line = note.Line;
            var conditions = note.Conditions;
            (_setup, _place) = (conditions.Setup, conditions["photo"] ?? conditions["folder"]?.TrimEnd('/'));
            (_from, _until) = (Time(file, note, "from", end: false), Time(file, note, "until", end: true));
            Says = s_choosing.Aggregate(conditions, (c, column) => c.With(column, null));
            if (conditions["setup_name"] is { } name)
                Says = Says.With("setup_name", null) with { Setup = name };
        }

        public int Line { get; }

        public Conditions Says { get; }

        public bool Fits(Photo photo) =>
            (_setup is null || photo.Frame.Conditions.Setup == _setup)
            && (_place is null || IsAt(photo.Path, _place))
            && (_from is null || photo.Taken >= _from)
            && (_until is null || photo.Taken < _until);

        /// <summary>Whether the place is a stretch of the path, whole names only.</summary>
        private static bool IsAt(string path, string place) => $"/{path}/".Contains($"/{place.TrimStart('/')}/", StringComparison.Ordinal);

        /// <summary>A time; the end of the day, minute or second that was named for the end of a range.</summary>
        private static DateTime? Time(string file, TableNote note, string column, bool end)
        {
            if (note.Conditions[column] is not { } text)
                return null;
            foreach (var (i, format) in s_times.Index())
                if (DateTime.TryParseExact(text, format, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
                    return !end ? time
                        : i == 0 ? time.AddDays(1)
                        : i == 1 ? time.AddMinutes(1)
                        : time.AddSeconds(1);
            throw new InputException(
                new("badInput", "This is no time.", "Write a day as 2026-11-20, or a moment as 2026-11-20 14:05 or 2026-11-20 14:05:30.")
                {
                    File = file,
                    Line = note.Line,
                    Column = column,
                    Value = text,
                }
            );
        }
    }
}
