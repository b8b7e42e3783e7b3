using System.CommandLine;

namespace Handhold.Cli;

/// <summary>The calculator within <c>frames</c>: a rate that is known, and no table.</summary>
internal sealed class KnownRateOptions
{
    private readonly Question _question;
    private readonly Option<string> _rate;
    private readonly Option<string> _rho;

    public KnownRateOptions(Question question)
    {
        _question = question;
        _rate = question.Add(
            new Option<string>("--known-rate") { HelpName = "P", Description = "Calculate from this keeper rate instead of a table." }
        );
        _rho = question.Add(
            new Option<string>("--rho") { HelpName = "R", Description = "Correlation of two frames of one burst, with --known-rate [0]." }
        );
    }

    public bool IsAsked(ParseResult given)
    {
        if (!given.Has(_rate) && given.Has(_rho))
            throw new UsageException(
                "--rho belongs to --known-rate.",
                "A table brings its own luck; leave --rho out, or give --known-rate."
            );
        return given.Has(_rate);
    }

    public ExitCode Answer(ParseResult given, Desk desk, int keepers, double assurance, Option at)
    {
        if (given.Has(_question.Source.Table) || given.Has(at))
            throw new UsageException("--known-rate needs no table and no --at.", "Leave them out, or leave --known-rate out.");
        var rate = given.Need(_rate, Reading.ShareOrEnd);
        var rho = given.ReadValue(_rho, Reading.ShareOrEnd);
        if (rho >= 1)
            throw new UsageException("--rho 1 makes every burst all keepers or none.", "Give a correlation below 1.");
        var plan = _question.Options(given);
        var answer = KnownRate.FramesNeeded(rate, rho ?? 0, keepers, assurance, plan.BurstsOf, plan.Budget);
        if (_question.WantsJson(given))
            Json.Answers(desk, [answer], (json, found) => AnswerJson.Write(json, found, rate, rho));
        else
            Say.Calculated(desk, answer);
        return answer.Frames is null ? ExitCode.NoAnswer : ExitCode.Done;
    }
}
