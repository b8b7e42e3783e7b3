using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Photos;

namespace Handhold.Cli;

/// <summary>How photographs become frames, shared by <c>import</c> and <c>fit</c>.</summary>
internal sealed class ImportOptions
{
    private readonly Option<string> _keeperRating = new("--keeper-from-rating")
    {
        HelpName = "N",
        Description =
            "Photographs rated N stars or more are keepers, 1 to 5, those rated less or rejected are not; unrated ones are not judged.",
    };
    private readonly Option<string> _keeperLabel = new("--keeper-from-label")
    {
        HelpName = "TEXT",
        Description = "Photographs with this label are keepers.",
    };
    private readonly Option<string> _rejectLabel = new("--reject-from-label")
    {
        HelpName = "TEXT",
        Description = "Photographs with this label are rejects.",
    };
    private readonly Option<string> _prefer = new("--prefer")
    {
        HelpName = "sidecar|photograph",
        Description = "Whose rating and label count where a photograph and its sidecar differ [sidecar].",
    };
    private readonly Option<string> _burstGap = new("--burst-gap")
    {
        HelpName = "PAUSE",
        Description = "Longest pause within a burst of photographs, such as 0.5s [1s].",
    };
    private readonly Option<string> _sessionGap = new("--session-gap")
    {
        HelpName = "PAUSE",
        Description = "Longest pause within a session, such as 3h; without it every day is one.",
    };
    private readonly Option<string> _salt = new("--serial-salt")
    {
        HelpName = "TEXT",
        Description = "A text of yours that keeps serial numbers secret behind the labels of setups.",
    };

    private readonly Option<string[]> _note = new("--note")
    {
        HelpName = "COLUMN=VALUE",
        Description = "What no photograph says, such as stabiliser_mode=body or criterion=print; may be given several times.",
    };
    private readonly Option<string> _notes = new("--notes")
    {
        HelpName = "NOTES.csv",
        Description =
            "A side table of the same: columns setup, folder, photo, from, until say which photographs a row is for, the others what it says.",
    };

    public ImmutableArray<Option> All => [_keeperRating, _keeperLabel, _rejectLabel, _prefer, _burstGap, _sessionGap, _salt, _note, _notes];

    public void AddTo(Command command)
    {
        foreach (var option in All)
            command.Options.Add(option);
    }

    /// <summary>Whether something says which photographs are keepers.</summary>
    public bool Judges(ParseResult given) => given.Has(_keeperRating) || given.Has(_keeperLabel);

    /// <summary>A table says itself what its frames are.</summary>
    public void RefuseAll(ParseResult given, string file)
    {
        if (All.FirstOrDefault(given.Has) is { } option)
            throw new UsageException($"{option.Name} is for photographs, and {file} is no folder.", "Leave it out, or name the folder.");
    }

    /// <summary>What came of photographs, and their frames.</summary>
    /// <exception cref="InputException">A place does not exist, or none of its files became a frame.</exception>
    public ImportReport Read(ParseResult given, IReadOnlyCollection<string> places, Desk desk)
    {
        var options = Options(given);
        if (places.FirstOrDefault(place => !Path.Exists(place)) is { } missing)
            throw new InputException(
                new("fileNotFound", $"There is no file or folder {missing}.", "Check the path.") { File = missing, Value = missing }
            );
        var notes = PhotoNotes.Read(ForAll(given), given.GetValue(_notes), desk.Cancellation);
        var import = Waiting.Counting(desk, "Reading", progress => Photographs.Read(places, options, progress, desk.Cancellation));
        if (import.Photos.IsEmpty)
            throw Nothing(import, places);
        return new(import, import.ToTable(notes.Of), given.GetValue(_notes), notes.Idle(import));
    }

    private Conditions ForAll(ParseResult given)
    {
        var all = Conditions.None;
        foreach (var text in given.GetValue(_note) ?? [])
        {
            var (column, value) = Reading.Pair(_note.Name, text);
            if (column is "photo" or "exposure" or "keeper")
                throw Reading.Refused(_note.Name, text, "is what the photographs say themselves.", "Leave it out.");
            all = Reading.With(_note.Name, text, all, column, value);
        }

        return all;
    }

    private PhotoOptions Options(ParseResult given)
    {
        if (given.Has(_rejectLabel) && !Judges(given))
            throw new UsageException(
                $"{_rejectLabel.Name} alone leaves no keepers.",
                $"Say with {_keeperRating.Name} or {_keeperLabel.Name} what a keeper is."
            );
        if (given.GetValue(_keeperLabel) is { } label && label == given.GetValue(_rejectLabel))
            throw Reading.Refused(_rejectLabel.Name, label, "is the label of keepers as well.", "Give two different labels.");
        return PhotoOptions.Default with
        {
            KeeperFromRating = given.ReadValue(_keeperRating, Stars),
            KeeperFromLabel = given.GetValue(_keeperLabel),
            RejectFromLabel = given.GetValue(_rejectLabel),
            Precedence = given.Read(_prefer, (o, text) => Reading.Word(o, text, ["sidecar", "photograph"])) is "photograph"
                ? MetadataPrecedence.Photograph
                : MetadataPrecedence.Sidecar,
            BurstGap = given.ReadOr(_burstGap, Reading.Pause, PhotoOptions.Default.BurstGap),
            SessionGap = given.ReadValue(_sessionGap, Reading.Pause),
            SerialSalt = given.GetValue(_salt) ?? "",
        };
    }

    private static int Stars(string option, string text) =>
        Reading.Whole(option, text) is var stars and >= 1 and <= 5
            ? stars
            : throw Reading.Refused(option, text, "is not 1 to 5.", "Unrated photographs have no stars, so keepers start at 1.");

    private static InputException Nothing(PhotoImport import, IEnumerable<string> places) =>
        new(
            new(
                "noFrames",
                $"No photograph became a frame: {(import.Skipped.IsEmpty ? "there is no file at all" : string.Join("; ", ImportPage.Groups(import.Skipped).Select(group => group.Text)))}.",
                "Name a folder with photographs whose metadata are still in them."
            )
            {
                File = places.First(),
            }
        );
}
