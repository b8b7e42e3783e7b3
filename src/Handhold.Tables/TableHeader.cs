using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Tables;

/// <summary>The columns of one table: which known ones it has and where, and which others.</summary>
internal sealed class TableHeader
{
    private static readonly FrozenSet<string> OfFrames = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        [
            "exposure",
            "exposure_s",
            "frames",
            "keepers",
            "unjudged",
            "kept_twice",
            "kept_once",
            "kept_never",
            "keeper",
            "second_verdict",
            "grade",
        ]
    );

    private static readonly FrozenSet<string> Known = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        [.. OfFrames, .. ConditionColumn.All.Select(c => c.Name)]
    );

    private readonly Dictionary<string, int> _places = new(StringComparer.OrdinalIgnoreCase);

    public TableHeader(ImmutableArray<string> names, int line, TableKind kind, TableOptions options, ErrorList errors)
    {
        var before = errors.Count;
        Names = names;
        foreach (var (i, name) in names.Index().Where(n => n.Item.Length > 0))
        {
            if (!_places.TryAdd(name, i))
            {
                errors.Add(line, name, "", Place(i) + " has the name of an earlier one.", "Rename or remove one of the two.");
            }
            else if (NearMiss(name) is { } meant)
            {
                errors.Add(line, name, "", $"Did you mean {meant}?", $"Write {meant}, or rename the column to something less like it.");
            }
        }
        Conditions = [.. ConditionColumn.All.Where(c => Has(c.Name)).Select(c => (c, IndexOf(c.Name)))];
        Others =
        [
            .. names.Index().Where(n => n.Item.Length > 0 && (!Known.Contains(n.Item) || IsGrade(n.Item))).Select(n => (n.Item, n.Index)),
        ];
        Nameless = [.. names.Index().Where(n => n.Item.Length == 0).Select(n => n.Index)];
        if (kind == TableKind.Frames)
        {
            CheckRequired(line, options, errors);
        }
        else
        {
            RefuseFrames(line, errors);
        }
        if (errors.Count > before)
        {
            errors.ThrowIfAny();
        }
    }

    /// <summary>The names as the file spells them.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>The columns of conditions that are present.</summary>
    public ImmutableArray<(ConditionColumn Column, int Index)> Conditions { get; }

    /// <summary>The columns kept by name: the unknown ones, and the grade.</summary>
    public ImmutableArray<(string Name, int Index)> Others { get; }

    /// <summary>The columns without a name, in which nothing may stand.</summary>
    public ImmutableArray<int> Nameless { get; }

    public bool Has(string column) => _places.ContainsKey(column);

    public int IndexOf(string column) => _places.GetValueOrDefault(column, -1);

    /// <summary>Why text cannot be the name of a column kept by name; null when it can.</summary>
    public static string? Fault(string name) =>
        name.Length == 0 || name.Trim() != name ? "is blank or begins or ends with a space"
        : Known.Contains(name) && !IsGrade(name) ? "has a meaning of its own"
        : NearMiss(name) is { } meant ? $"is too like {meant}"
        : null;

    /// <summary>Comma, semicolon or tab: the one that shows most known names, then the one that shows most names.</summary>
    public static char SeparatorOf(ReadOnlySpan<char> header)
    {
        var text = header.ToString();
        return ",;\t".MaxBy(separator =>
        {
            var names = text.Split(separator);
            return (names.Count(n => Known.Contains(n.Trim().Trim('"'))), names.Length);
        });
    }

    private static bool IsGrade(string name) => name.Equals("grade", StringComparison.OrdinalIgnoreCase);

    private static string Place(int index) => string.Create(CultureInfo.InvariantCulture, $"Column {index + 1}");

    private void RefuseFrames(int line, ErrorList errors)
    {
        foreach (var name in Names.Where(OfFrames.Contains))
        {
            errors.Add(line, name, "", "A side table says nothing of frames themselves.", "Leave this column out.");
        }
    }

    private void CheckRequired(int line, TableOptions options, ErrorList errors)
    {
        void Refuse(string message, string remedy) => errors.Add(line, null, string.Join(' ', Names), message, remedy);

        if (!Has("exposure") && !Has("exposure_s"))
        {
            Refuse("There is no column of shutter speeds.", "Name it exposure, or exposure_s when it holds plain seconds.");
        }
        if (Has("exposure") && Has("exposure_s"))
        {
            Refuse("There are two columns of shutter speeds, exposure and exposure_s.", "Keep one of them.");
        }
        if (Has("frames") != Has("keepers"))
        {
            Refuse("One of the columns frames and keepers is missing.", "Give both: the frames judged, and the keepers among them.");
        }
        var counts = Has("frames") || Has("keepers");
        if (counts && Has("keeper"))
        {
            Refuse(
                "The table mixes cells (frames, keepers) and single frames (keeper).",
                "Keep frames and keepers for cells of equal frames, or keeper for one row a frame."
            );
        }
        if (counts && options.KeeperFromGrade is not null)
        {
            Refuse(
                "The keepers are counted already, and grades are to say what a keeper is.",
                "Leave out the grade from which a frame is a keeper."
            );
        }
        if (counts && Has("second_verdict"))
        {
            Refuse(
                "The column second_verdict goes with single frames (keeper or grade).",
                "Count the frames judged twice in kept_twice, kept_once and kept_never."
            );
        }
        if (!counts && (Has("kept_twice") || Has("kept_once") || Has("kept_never")))
        {
            Refuse(
                "The columns kept_twice, kept_once and kept_never go with frames and keepers.",
                "Write second_verdict in the row of a frame."
            );
        }
        if (!counts && Has("unjudged"))
        {
            Refuse(
                "The column unjudged goes with frames and keepers.",
                "Leave the keeper empty in the row of a frame that was not judged."
            );
        }
        if (!counts && options.KeeperFromGrade is not null && !Has("grade"))
        {
            Refuse(
                "Grades are to say what a keeper is, and there is no column grade.",
                "Add it, or leave out the grade from which a frame is a keeper."
            );
        }
        if (!counts && options.KeeperFromGrade is null && !Has("keeper"))
        {
            if (Has("grade"))
            {
                Refuse(
                    "Grades alone do not say what a keeper is.",
                    "Say from which grade up a frame is a keeper: --keeper-from-grade, KeeperFromGrade in code."
                );
            }
            else
            {
                Refuse("There is no column that says what was kept.", "Add frames and keepers, or keeper, or grade.");
            }
        }
    }

    /// <summary>The known column an unknown one is mistaken for: one letter away, or two when it has six letters or more.</summary>
    private static string? NearMiss(string name) =>
        Known.Contains(name)
            ? null
            : Known
                .Order(StringComparer.Ordinal)
                .Select(known => (Name: known, Distance: SpellingDistance.Between(name, known)))
                .Where(known => known.Distance <= (known.Name.Length < 6 ? 1 : 2))
                .OrderBy(known => known.Distance)
                .Select(known => known.Name)
                .FirstOrDefault();
}
