using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Diagnostics;
using Handhold.Plots;
using ScottPlot;

namespace Handhold.Cli;

/// <summary><c>handhold plot</c>: a picture of each curve, or one of all.</summary>
internal static class PlotVerb
{
    /// <summary>The most frames that a picture of frames needed shows, unless --budget says otherwise.</summary>
    private const int Budget = 100;

    private static readonly ImmutableArray<string> Kinds =
    [
        "curve",
        "setups",
        "frames",
        "keepers",
        "prior",
        "stops",
        "days",
        "levels",
        "level-curves",
        "fitted",
        "residuals",
    ];

    public static Command Build(Desk desk)
    {
        var question = new Question("plot", "Draw the keeper curves, or what follows from them, one picture a curve.");
        var to = question.Add(
            new Option<string>("--out")
            {
                HelpName = "FILE.png|FILE.svg",
                Description = "Picture to write; with several curves, each one's name goes before the dot.",
            }
        );
        var kind = question.Add(
            new Option<string>("--kind")
            {
                HelpName = string.Join('|', Kinds),
                Description =
                    "The curve; all setups in one picture; frames needed against speed; keepers of a plan; prior against posterior; terms in stops; luck of days; half-keeper speeds of levels that vary, or their curves side by side; rates observed against fitted; residuals [curve].",
            }
        );
        var rate = question.Add(Shared.Rate());
        var assurance = question.Add(Shared.Assurance());
        var at = question.Add(new Option<string>("--at") { HelpName = "SPEED", Description = "For keepers: the speed of the plan." });
        var frames = question.Add(new Option<string>("--frames") { HelpName = "N", Description = "For keepers: frames of the plan." });
        var column = question.Add(
            new Option<string>("--column")
            {
                HelpName = "COLUMN",
                Description = "For levels and level-curves: which column's levels [the first that varies].",
            }
        );
        var theme = question.Add(
            new Option<string>("--theme") { HelpName = "light|dark", Description = "For paper or for dark screens [light]." }
        );
        var size = question.Add(
            new Option<string>("--size")
            {
                HelpName = "1200x800",
                Description = "Width and height in pixels [1200x800; of level-curves those of each curve, 420x320].",
            }
        );
        question.PlansBursts(Budget);
        return question.Runs(given =>
        {
            var file = given.GetValue(to) ?? throw Given.Missing(to.Name);
            if (Path.GetExtension(file).ToUpperInvariant() is not (".PNG" or ".SVG"))
                throw Reading.Refused(to.Name, file, "ends in neither .png nor .svg.", "Those are the pictures that can be written.");
            var what = given.Read(kind, (o, text) => Reading.Word(o, text, [.. Kinds]));
            var pixels =
                what == "level-curves"
                    ? given.ReadOr(size, Pictures.ReadCellSize, (420, 320))
                    : given.ReadOr(size, Pictures.ReadSize, (1200, 800));
            var wanted = given.ReadOr(rate, Reading.Share, 0.5);
            var sure = given.ReadOr(assurance, Reading.Share, 0.95);
            var look =
                given.Read(theme, (o, text) => Reading.Word(o, text, ["light", "dark"])) == "dark" ? PictureTheme.Dark : PictureTheme.Light;
            (ShutterSpeed At, int Frames) plan =
                what == "keepers" ? (given.Need(at, Reading.Speed), given.Need(frames, Reading.Count)) : default;
            var (curves, answers) = question.Asked(given, desk);
            PictureOptions options = new() { Answers = answers, Theme = look };
            KeeperCurvePlotOptions curveOptions = new()
            {
                TargetRate = wanted,
                Answers = answers,
                Theme = look,
            };
            var files = what switch
            {
                "setups" => [Pictures.WriteSetups(curves, file, pixels, wanted, options)],
                "frames" => Pictures.Write(curves, file, pixels, desk, c => FramesNeededPlot.Draw(c, sure, options, desk.Cancellation)),
                "keepers" => Pictures.Write(curves, file, pixels, desk, c => Keepers(c, plan.At, plan.Frames, options, desk)),
                "prior" => Pictures.Write(curves, file, pixels, desk, c => Drawn(kind, "prior", () => PriorPlot.Draw(c, options))),
                "stops" => Pictures.Write(curves, file, pixels, desk, c => Drawn(kind, "stops", () => InStopsPlot.Draw(c, options))),
                "days" => Pictures.Write(
                    curves,
                    file,
                    pixels,
                    desk,
                    c => Drawn(kind, "days", () => DaysPlot.Draw(c.Days(desk.Cancellation), options))
                ),
                "levels" => Pictures.Write(
                    curves,
                    file,
                    pixels,
                    desk,
                    c => Drawn(kind, "levels", () => LevelsPlot.Draw(c, given.GetValue(column), options))
                ),
                "level-curves" => Pictures.WriteSheets(
                    curves,
                    file,
                    pixels,
                    desk,
                    c => Drawn(kind, "level-curves", () => LevelCurvesPlot.Draw(c, given.GetValue(column), options))
                ),
                "fitted" => Pictures.Write(curves, file, pixels, desk, c => FittedRatesPlot.Draw(c.Check(wanted), options)),
                "residuals" => Pictures.Write(
                    curves,
                    file,
                    pixels,
                    desk,
                    c => Drawn(kind, "residuals", () => ResidualsPlot.Draw(c.Check(wanted), options))
                ),
                _ => Pictures.Write(curves, file, pixels, desk, c => KeeperCurvePlot.Draw(c, curveOptions)),
            };
            if (question.WantsJson(given))
                Json.Files(desk, files);
            else
                Say.Files(desk, files);
            return ExitCode.Done;
        });
    }

    private static Plot Keepers(KeeperCurve curve, ShutterSpeed at, int frames, PictureOptions options, Desk desk)
    {
        try
        {
            return KeeperCountPlot.Draw(curve, at, frames, options.Answers.BurstsOf ?? Math.Min(3, frames), options, desk.Cancellation);
        }
        catch (ArgumentOutOfRangeException unusable)
        {
            throw new UsageException(unusable.Message.Split(" (Parameter ")[0], "Change --frames or --bursts-of.");
        }
    }

    private static T Drawn<T>(Option<string> kind, string what, Func<T> draw)
    {
        try
        {
            return draw();
        }
        catch (ArgumentException unusable)
        {
            throw new UsageException($"{kind.Name} {what}: {unusable.Message.Split(" (Parameter ")[0]}", "Or draw another kind.", what);
        }
    }
}
