using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

/// <summary>A verb that asks the curves of a table or a saved fit.</summary>
internal sealed class Question
{
    private readonly Command _command;
    private readonly QuestionOptions _options = new();
    private readonly Option<bool> _json = Shared.Json();
    private BurstPlan? _bursts;

    /// <param name="name">The verb.</param>
    /// <param name="description">What it asks.</param>
    /// <param name="tableOptional">Whether it can do without a table.</param>
    public Question(string name, string description, bool tableOptional = false)
    {
        _command = new(name, description);
        Source = new(tableOptional);
    }

    public Source Source { get; }

    /// <summary>Adds an option of this verb's own; the shared ones follow.</summary>
    public Option<T> Add<T>(Option<T> option)
    {
        _command.Options.Add(option);
        return option;
    }

    /// <summary>Adds the options of a plan in bursts.</summary>
    /// <param name="budget">The largest number of frames considered unless --budget says otherwise.</param>
    public void PlansBursts(int? budget = null)
    {
        _bursts = new(budget ?? AnswerOptions.Default.Budget);
        _bursts.AddTo(_command);
    }

    public AnswerOptions Options(ParseResult given)
    {
        var options = _options.Read(given);
        return _bursts?.Read(given, options) ?? options;
    }

    /// <summary>The curves that are asked, and how: with what is said of terms.</summary>
    public (ImmutableArray<KeeperCurve> Curves, AnswerOptions Options) Asked(ParseResult given, Desk desk, string? also = null)
    {
        var options = Options(given);
        var curves = Source.Chosen(given, desk, also);
        var stated = Source.Stated(given, curves);
        if (stated.Session is { } session && options.Day == Day.Another)
            throw new UsageException(
                $"--set session={session} says which day is today, and the answer is for another day.",
                "Add --day same, or leave it out; --each splits the table by session."
            );
        return (curves, options with { Conditions = stated });
    }

    public bool WantsJson(ParseResult given) => given.GetValue(_json);

    /// <summary>The finished verb.</summary>
    public Command Runs(Func<ParseResult, ExitCode> run)
    {
        Source.AddChoiceTo(_command);
        _options.AddTo(_command);
        Source.AddTo(_command);
        _command.Options.Add(_json);
        _command.SetAction(given => (int)run(given));
        return _command;
    }

    /// <summary>The finished verb that gives each curve the same questions.</summary>
    /// <param name="desk">Where to report.</param>
    /// <param name="read">Reads the verb's own options and gives back the questions to put to a curve.</param>
    public Command Answers(Desk desk, Func<ParseResult, Asking> read) => Runs(given => Answer(given, desk, read(given)));

    public ExitCode Answer(ParseResult given, Desk desk, Asking ask)
    {
        var (curves, options) = Asked(given, desk);
        var answers = Waiting.ForEach(desk, "Answering", curves, curve => ask(curve, options));
        if (WantsJson(given))
            Json.Answers(desk, answers);
        else
            Say.Answers(desk, answers, options);
        return answers.All(a => a.HasAnswer) ? ExitCode.Done : ExitCode.NoAnswer;
    }
}
