using System.CommandLine;

namespace Handhold.Cli;

/// <summary>The options that every question takes.</summary>
internal sealed class QuestionOptions
{
    private readonly Option<string> _day = new("--day")
    {
        HelpName = "another|same",
        Description =
            "For another day with luck of its own, or for the day of the test, of several the one of --set session=LABEL [another].",
    };
    private readonly Option<bool> _beyondTested = new("--beyond-tested")
    {
        Description = "Answer also more than one stop beyond the speeds tested.",
    };
    private readonly Option<string> _marks = new("--marks")
    {
        HelpName = "full|half|third",
        Description = "Marks that the camera offers [third].",
    };
    private readonly Option<string> _whose = new("--whose")
    {
        HelpName = "this|typical|new-setup|new-photographer|population",
        Description =
            "Whose rate is meant, needed where levels vary: of the level that --set names, a typical one, a new setup of the photographer that --set names, "
            + "a new photographer, or the average over all [this].",
    };

    private readonly Option<string> _intervals = new("--intervals")
    {
        HelpName = "profile|fieller|delta",
        Description = "How intervals of exposures are made, without a posterior [profile].",
    };

    public void AddTo(Command command)
    {
        command.Options.Add(_day);
        command.Options.Add(_beyondTested);
        command.Options.Add(_marks);
        command.Options.Add(_whose);
        command.Options.Add(_intervals);
    }

    public AnswerOptions Read(ParseResult given)
    {
        return AnswerOptions.Default with
        {
            Whose = given.Read(
                _whose,
                (o, text) => Reading.Word(o, text, ["this", "typical", "new-setup", "new-photographer", "population"])
            ) switch
            {
                "this" => Whose.This,
                "typical" => Whose.Typical,
                "new-setup" => Whose.NewSetup,
                "new-photographer" => Whose.NewPhotographer,
                "population" => Whose.Population,
                _ => null,
            },
            Day = given.Read(_day, (o, text) => Reading.Word(o, text, ["another", "same"])) == "same" ? Day.Same : Day.Another,
            BeyondTested = given.GetValue(_beyondTested),
            Intervals = given.Read(_intervals, (o, text) => Reading.Word(o, text, ["profile", "fieller", "delta"])) switch
            {
                "fieller" => IntervalMethod.Fieller,
                "delta" => IntervalMethod.Delta,
                _ => IntervalMethod.Profile,
            },
            Marks = given.Read(_marks, (o, text) => Reading.Word(o, text, ["third", "half", "full"])) switch
            {
                "full" => Marks.Full,
                "half" => Marks.Half,
                _ => Marks.Third,
            },
        };
    }
}
