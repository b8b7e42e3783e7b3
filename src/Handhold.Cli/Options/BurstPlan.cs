using System.CommandLine;

namespace Handhold.Cli;

/// <summary>How the frames of a plan are shot, and how many may be.</summary>
internal sealed class BurstPlan(int budget)
{
    private readonly Option<string> _burstsOf = new("--bursts-of")
    {
        HelpName = "M",
        Description = "Shoot in bursts of M frames with a fresh grip between [all frames in one burst].",
    };
    private readonly Option<string> _budget = new("--budget")
    {
        HelpName = "N",
        Description = FormattableString.Invariant($"The largest number of frames considered [{budget}]."),
    };

    public void AddTo(Command command)
    {
        command.Options.Add(_burstsOf);
        command.Options.Add(_budget);
    }

    public AnswerOptions Read(ParseResult given, AnswerOptions options) =>
        options with
        {
            BurstsOf = given.ReadValue(_burstsOf, Reading.Count),
            Budget = given.ReadOr(_budget, Reading.Count, budget),
        };
}
