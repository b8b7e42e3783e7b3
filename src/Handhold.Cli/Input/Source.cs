using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

/// <summary>Where curves come from: a table with the options of fitting, or a saved fit; and which of them are meant.</summary>
internal sealed class Source
{
    private readonly Option<string[]> _set = new("--set")
    {
        HelpName = "COLUMN=VALUE",
        Description =
            "Only curves with this value, such as setup=85mm; given again for the same column, either value. For a term: what the answer is for.",
    };

    private readonly ImportOptions? _photos;

    /// <param name="optional">Whether the verb can do without a table.</param>
    /// <param name="photos">Whether the verb takes a folder of photographs as well.</param>
    public Source(bool optional = false, bool photos = false)
    {
        Table = new("TABLE")
        {
            Description = photos
                ? "CSV table of judged frames, a fit that was saved, or a folder of rated photographs; - reads standard input."
                : "CSV table of judged frames, or a fit that was saved; - reads standard input.",
            Arity = optional ? ArgumentArity.ZeroOrOne : ArgumentArity.ExactlyOne,
        };
        _photos = photos ? new() : null;
    }

    public Argument<string> Table { get; }

    public FitOptions Fit { get; } = new();

    public void AddTo(Command command)
    {
        command.Arguments.Add(Table);
        Fit.AddTo(command);
        _photos?.AddTo(command);
    }

    /// <summary>For verbs that ask some of the curves only.</summary>
    public void AddChoiceTo(Command command) => command.Options.Add(_set);

    /// <summary>All curves of the table, split by <paramref name="also"/> beside the columns of --each, or of the saved fit.</summary>
    public FittedCurves Curves(ParseResult given, Desk desk, string? also = null)
    {
        var path = given.GetRequiredValue(Table);
        if (_photos is not null && Directory.Exists(path))
            return Fitted(given, desk, also, () => OfPhotos(given, path, _photos, desk));
        _photos?.RefuseAll(given, path);
        var file = InputFile.Open(path, desk);
        if (file.SavedFit is { } json)
        {
            Fit.RefuseAll(given, file.Name);
            return Waiting.For(desk, "Fitting again", progress => SavedFit.Read(json, progress, desk.Cancellation));
        }

        return Fitted(given, desk, also, () => file.Table(Fit.ReadingOf(given), desk.Cancellation));
    }

    private FittedCurves Fitted(ParseResult given, Desk desk, string? also, Func<FrameTable> read)
    {
        var model = Fit.Model(given, also);
        var table = Fit.Prepare(given, read(), model);
        model = Fit.Judged(given, model, table);
        var curves = Waiting.For(desk, "Fitting", progress => model.Fit(table, progress, desk.Cancellation));
        Fit.Save(given, curves);
        return curves;
    }

    /// <summary>The frames of photographs; what came of them is told beside the report.</summary>
    private static FrameTable OfPhotos(ParseResult given, string folder, ImportOptions photos, Desk desk)
    {
        if (!photos.Judges(given))
            throw new UsageException(
                $"Nothing says which photographs in {folder} are keepers.",
                "Give --keeper-from-rating N, such as 1, or --keeper-from-label TEXT."
            );
        var report = photos.Read(given, [folder], desk);
        ImportPage.Write(new(desk.Error, width: null), report);
        return report.Table;
    }

    /// <summary>The curves that --set leaves.</summary>
    public ImmutableArray<KeeperCurve> Chosen(ParseResult given, Desk desk, string? also = null)
    {
        var wanted = (given.GetValue(_set) ?? []).Select(text => (Text: text, Pair: Reading.Pair(_set.Name, text))).ToArray();
        ImmutableArray<KeeperCurve> curves = [.. Curves(given, desk, also)];
        foreach (var set in wanted.GroupBy(w => w.Pair.Name))
        {
            if (IsStated(curves, set.Key))
                continue;
            var values = curves.Select(c => c.Key[set.Key]).OfType<string>().Distinct().ToArray();
            if (set.FirstOrDefault(w => !values.Contains(w.Pair.Value)) is { Text: { } strange })
                throw Reading.Refused(_set.Name, strange, "is not among these curves.", Choices(curves, set.Key, values));
            curves = [.. curves.Where(c => set.Any(w => w.Pair.Value == c.Key[set.Key]))];
        }

        return curves;
    }

    /// <summary>What --set says of terms.</summary>
    public Conditions Stated(ParseResult given, ImmutableArray<KeeperCurve> curves)
    {
        var stated = Conditions.None;
        foreach (var text in given.GetValue(_set) ?? [])
        {
            var (column, value) = Reading.Pair(_set.Name, text);
            if (!IsStated(curves, column))
                continue;
            if (stated[column] is not null)
                throw Reading.Refused(_set.Name, text, "is the second value of a term.", "Ask for one at a time.");
            stated = Reading.With(_set.Name, text, stated, column, value);
        }

        return stated;
    }

    /// <summary>Whether a column states where a term stands, or which day is today, rather than telling curves apart.</summary>
    private static bool IsStated(ImmutableArray<KeeperCurve> curves, string column) =>
        (
            column == "session"
            || curves.Any(c =>
                c.Terms.Any(t => t.Columns.Contains(column)) || c.Model.Varies.Any(v => v.Column == column || v.Within.Contains(column))
            )
        ) && curves.All(c => c.Key[column] is null);

    private static string Choices(ImmutableArray<KeeperCurve> curves, string column, string[] values) =>
        values.Length > 0 ? $"{column} is {string.Join(" or ", values)}."
        : curves[0].Key.Values is [_, ..] columns
            ? $"The columns that tell the curves apart are {string.Join(", ", columns.Select(c => c.Key))}."
        : "All rows make one curve; --each splits them by a column.";
}
