using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold fit</c>: the curves of a table.</summary>
internal static class FitVerb
{
    public static Command Build(Desk desk)
    {
        var source = new Source(photos: true);
        var json = Shared.Json();
        var check = new Option<bool>("--check")
        {
            Description =
                "Where levels vary: also leave out every speed and every cell, which takes as long again. Other curves are always checked.",
        };
        var command = new Command("fit", "Learn a keeper curve for each photographer, setup and criterion of a table.");
        source.AddTo(command);
        command.Options.Add(check);
        command.Options.Add(json);
        command.SetAction(given =>
        {
            var curves = source.Curves(given, desk);
            foreach (var linear in curves.Select(c => c.Linear).OfType<LinearFit>())
                linear.FindIntervals(cancellation: desk.Cancellation);
            if (given.GetValue(json))
                desk.Output.WriteLine(source.Fit.Text(given, curves, given.GetValue(check)));
            else
                Say.Fit(desk, curves, given.GetValue(check));
            return (int)ExitCode.Done;
        });
        return command;
    }
}
