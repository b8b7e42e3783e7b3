using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold slowest</c>: the slowest marked speed that can be trusted.</summary>
internal static class SlowestVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question("slowest", "How slow can I go? Give --rate, or --frames and --keepers.");
        var rate = question.Add(Shared.Rate());
        var frames = question.Add(new Option<string>("--frames") { HelpName = "N", Description = "Frames that will be shot." });
        var keepers = question.Add(Shared.Keepers());
        var assurance = question.Add(Shared.Assurance());
        question.PlansBursts();
        return question.Answers(
            desk,
            given =>
            {
                var sure = given.Need(assurance, Reading.Share);
                given.RefuseBoth(rate, frames);
                given.RefuseBoth(rate, keepers);
                if (given.ReadValue(rate, Reading.Share) is { } wanted)
                    return (curve, options) => [curve.Slowest(wanted, sure, options)];
                if (!given.Has(frames) && !given.Has(keepers))
                    throw new UsageException("Slowest for what?", "Give --rate P, or --frames N and --keepers K.");
                var (n, k) = (given.Need(frames, Reading.Count), given.Need(keepers, Reading.Count));
                if (k > n)
                    throw new UsageException(
                        $"--keepers {k} of --frames {n} is more than all.",
                        "Ask for at most as many keepers as frames."
                    );
                return (curve, options) => [curve.SlowestFor(n, k, sure, options)];
            }
        );
    }
}
