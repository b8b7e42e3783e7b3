using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold days</c>: how lucky each day was, and whether the days show progress.</summary>
internal static class DaysVerb
{
    public static Command Build(Desk desk)
    {
        var (source, json) = (new Source(), Shared.Json());
        var command = new Command("days", "How lucky was each day, and do the days show progress beyond luck?");
        source.AddChoiceTo(command);
        source.AddTo(command);
        command.Options.Add(json);
        command.SetAction(given =>
        {
            var curves = source.Chosen(given, desk);
            if (curves.FirstOrDefault(c => c.Linear is not null || c.Model.Luck == LuckKind.None) is { } without)
                throw new UsageException(
                    $"{without.Key} was fitted without the luck of days.",
                    "Fit it with --estimator posterior and --luck normal, the defaults."
                );
            var answers = Waiting.ForEach<KeeperCurve, DaysAnswer>(
                desk,
                "Asking the days",
                curves,
                curve => [curve.Days(desk.Cancellation)]
            );
            if (given.GetValue(json))
                Json.Answers(desk, answers, AnswerJson.Write);
            else
                DaysPage.Write(Say.OutputPage(desk), answers);
            return (int)ExitCode.Done;
        });
        return command;
    }
}
