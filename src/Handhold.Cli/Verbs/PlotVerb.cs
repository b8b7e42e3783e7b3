using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold plot</c>: a picture of each curve.</summary>
internal static class PlotVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question("plot", "Draw the keeper curves with their bands and what was counted, one picture a curve.");
        var to = question.Add(
            new Option<string>("--out")
            {
                HelpName = "FILE.png|FILE.svg",
                Description = "Picture to write; with several curves, each one's name goes before the dot.",
            }
        );
        var rate = question.Add(Shared.Rate());
        var size = question.Add(
            new Option<string>("--size") { HelpName = "1200x800", Description = "Width and height in pixels [1200x800]." }
        );
        return question.Runs(given =>
        {
            var file = given.GetValue(to) ?? throw Given.Missing(to.Name);
            if (Path.GetExtension(file).ToUpperInvariant() is not (".PNG" or ".SVG"))
                throw Reading.Refused(to.Name, file, "ends in neither .png nor .svg.", "Those are the pictures that can be written.");
            var pixels = given.ReadOr(size, Pictures.ReadSize, (1200, 800));
            var wanted = given.ReadOr(rate, Reading.Share, 0.5);
            var (curves, options) = question.Asked(given, desk);
            var files = Pictures.Write(curves, file, pixels, wanted, options, desk);
            if (question.WantsJson(given))
                Json.Files(desk, files);
            else
                Say.Files(desk, files);
            return ExitCode.Done;
        });
    }
}
