using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold frames</c>: how many frames bring the wanted keepers home; with a known rate, the calculator.</summary>
internal static class FramesVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question(
            "frames",
            "How many frames must I shoot to come home with K keepers? From a table, or with --known-rate and no table.",
            tableOptional: true
        );
        var at = question.Add(Shared.At());
        var keepers = question.Add(Shared.Keepers());
        var assurance = question.Add(Shared.Assurance());
        var calculator = new KnownRateOptions(question);
        question.PlansBursts();
        return question.Runs(given =>
        {
            var (k, sure) = (given.Need(keepers, Reading.Count), given.Need(assurance, Reading.Share));
            if (calculator.IsAsked(given))
                return calculator.Answer(given, desk, k, sure, at);
            if (!given.Has(question.Source.Table))
                throw new UsageException(
                    "There is neither a table nor --known-rate.",
                    "Name a table of judged frames, or give the rate that you know."
                );
            var speeds = given.Speeds(at);
            return question.Answer(given, desk, (curve, options) => speeds.Select(speed => curve.FramesNeeded(speed, k, sure, options)));
        });
    }
}
