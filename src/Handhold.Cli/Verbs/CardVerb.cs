using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Plots;

namespace Handhold.Cli;

/// <summary><c>handhold card</c>: a card a setup for the bag.</summary>
internal static class CardVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question(
            "card",
            "Write a field card for each setup: keeper rates, frames to shoot, the slowest speed to trust."
        );
        var to = question.Add(
            new Option<string>("--out")
            {
                HelpName = "FILE.html|FILE.png",
                Description = "A page with all cards, to read and to print; or a picture a card, each one's name before the dot.",
            }
        );
        var paper = question.Add(
            new Option<string>("--paper") { HelpName = "a6|a4", Description = "A sheet of A6 a card, or A4 with four [a6]." }
        );
        var rate = question.Add(Shared.Rate());
        var assurance = question.Add(Shared.Assurance());
        var date = question.Add(
            new Option<string>("--date")
            {
                HelpName = "TEXT",
                Description = "When the frames were shot [the sessions' labels, where they are dates such as 2026-11-20].",
            }
        );
        question.PlansBursts(budget: FieldCardOptions.Default.Answers.Budget);
        return question.Runs(given =>
        {
            var file = given.GetValue(to) ?? throw Given.Missing(to.Name);
            var extension = Path.GetExtension(file).ToUpperInvariant();
            if (extension is not (".HTML" or ".PNG"))
                throw Reading.Refused(to.Name, file, "ends in neither .html nor .png.", "Those are the cards that can be written.");
            if (extension == ".PNG" && given.Has(paper))
                throw new UsageException("--paper is for cards as .html.", "Leave it out, or name a file that ends in .html.");
            var wanted = FieldCardOptions.Default with
            {
                Rate = given.ReadOr(rate, Reading.Share, FieldCardOptions.Default.Rate),
                Assurance = given.ReadOr(assurance, Reading.Share, FieldCardOptions.Default.Assurance),
                Date = given.GetValue(date),
            };
            var sheet = given.Read(paper, (o, text) => Reading.Word(o, text, ["a6", "a4"])) == "a4" ? CardPaper.A4 : CardPaper.A6;
            var (curves, options) = question.Asked(given, desk);
            wanted = wanted with { Answers = options };
            var named = Pictures.Names(curves, file);
            var cards = Waiting.ForEach<(KeeperCurve Curve, string File), (FieldCard Card, string File)>(
                desk,
                "Answering",
                named,
                n => [(FieldCard.Of(n.Curve, wanted, desk.Cancellation), n.File)]
            );
            ImmutableArray<string> files = extension == ".PNG" ? [.. cards.Select(c => c.File)] : [file];
            if (extension == ".PNG")
                foreach (var (card, picture) in cards)
                    card.SavePicture(picture);
            else
                FieldCard.SaveHtml(cards.Select(c => c.Card), file, sheet);
            if (question.WantsJson(given))
                Json.Files(desk, files);
            else
                Say.Files(desk, files);
            return ExitCode.Done;
        });
    }
}
