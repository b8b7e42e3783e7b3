using System.CommandLine;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary><c>handhold import</c>: a table of frames from photographs.</summary>
internal static class ImportVerb
{
    public static Command Build(Desk desk)
    {
        var photos = new Argument<string[]>("PHOTOS")
        {
            Description = "Folders of photographs, read with all that is in them, or single photographs.",
            Arity = ArgumentArity.OneOrMore,
        };
        var output = new Option<string>("--out") { HelpName = "FRAMES.csv", Description = "The table; without it, standard output." };
        var (options, json) = (new ImportOptions(), Shared.Json());
        var command = new Command("import", "Make a table of frames from photographs and their sidecars. No photograph is changed.")
        {
            photos,
            output,
        };
        options.AddTo(command);
        command.Options.Add(json);
        command.SetAction(given =>
        {
            var path = given.Read(output, Csv);
            if (given.GetValue(json) && path is null)
                throw new UsageException("--json and the table would both go to standard output.", "Name a file for the table with --out.");
            var report = options.Read(given, given.GetRequiredValue(photos), desk);
            using StringWriter text = new();
            TableWriter.WriteFrames(report.Table, text);
            if (path is null)
                desk.Output.Write(text);
            else
                WholeFile.WriteText(path, text.ToString());
            if (given.GetValue(json))
                Json.Import(desk, path!, report);
            else
                Tell(desk, path, options.Judges(given), report);
            return (int)ExitCode.Done;
        });
        return command;
    }

    private static void Tell(Desk desk, string? path, bool judged, ImportReport report)
    {
        var page = path is null ? new Page(desk.Error, width: null) : Say.OutputPage(desk);
        ImportPage.Write(page, report);
        if (!judged)
            page.Text(
                "Nothing says which of them are keepers: give --keeper-from-rating or --keeper-from-label, or fill in the column keeper."
            );
        if (path is not null)
            page.Text($"Wrote {path}");
    }

    /// <summary>The table must not take the place of a photograph.</summary>
    private static string Csv(string option, string text) =>
        Path.GetExtension(text).Equals(".csv", StringComparison.OrdinalIgnoreCase)
            ? text
            : throw Reading.Refused(option, text, "is not named as a table.", "Give it a name that ends in .csv.");
}
