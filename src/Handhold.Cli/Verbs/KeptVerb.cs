using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Plots;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary><c>handhold kept</c>: what came home against what was promised.</summary>
internal static class KeptVerb
{
    public static Command Build(Desk desk)
    {
        var plans = new Argument<string>("PLANS") { Description = "Plans that were handed out: what `handhold frames … --json` printed." };
        var table = new Argument<string>("TABLE")
        {
            Description = "CSV table of what was shot; a column plan may say whose plan's frames they are.",
        };
        var also = new Option<string[]>("--also") { HelpName = "PLANS", Description = "More plans; may be given several times." };
        var fit = new Option<string>("--fit")
        {
            HelpName = "FIT.json",
            Description = "The saved fit that the plans came of: it is fitted again with the new frames, and the plans are made anew.",
        };
        var save = new Option<string>("--save") { HelpName = "FIT.json", Description = "Keep that new fit in a file." };
        var picture = new Option<string>("--out")
        {
            HelpName = "FILE.png|FILE.svg",
            Description = "A picture of promises against what was kept.",
        };
        var grade = new Option<string>("--keeper-from-grade") { HelpName = "N", Description = "Frames of grade N and above are keepers." };
        var seed = new Option<string>("--seed") { HelpName = "N", Description = "Seed of the chance in places of counts [1]." };
        var json = Shared.Json();
        var command = new Command("kept", "Hold what came home against the plans: how many were kept, and how many were promised to be.")
        {
            plans,
            table,
            also,
            fit,
            save,
            picture,
            grade,
            seed,
            json,
        };
        command.SetAction(given =>
        {
            if (given.Has(save) && !given.Has(fit))
                throw new UsageException(
                    "--save keeps the fit of --fit with the new frames.",
                    "Name that with --fit, or leave --save out."
                );
            var read = Plans([given.GetRequiredValue(plans), .. given.GetValue(also) ?? []], desk);
            var frames = InputFile
                .Open(given.GetRequiredValue(table), desk)
                .Table(TableOptions.Default with { KeeperFromGrade = given.ReadValue(grade, Reading.Count) }, desk.Cancellation);
            var report = KeptReport.Of(read, frames, given.ReadOr(seed, Reading.Whole, 1));
            var again = given.GetValue(fit) is { } file ? Again(report, file, frames, given.GetValue(save), desk) : [];
            if (given.GetValue(picture) is { } path)
            {
                using var plot = PromiseKeptPlot.Draw(report);
                plot.SavePicture(path);
            }

            if (given.GetValue(json))
                Json.Kept(desk, report, again);
            else
                KeptPage.Write(Say.OutputPage(desk), report, again);
            return (int)(report.Overall is null ? ExitCode.NoAnswer : ExitCode.Done);
        });
        return command;
    }

    private static ImmutableArray<PlannedShoot> Plans(IEnumerable<string> files, Desk desk)
    {
        ImmutableArray<PlannedShoot> plans = [];
        foreach (var name in files)
        {
            var file = InputFile.Open(name, desk);
            var json =
                file.SavedFit
                ?? throw new UsageException(
                    $"{file.Name} holds no plans.",
                    "Save some first: `handhold frames TABLE … --json > plans.json`."
                );
            plans = plans.AddRange(SavedPlans.Read(json, first: plans.Length + 1));
        }

        return plans;
    }

    /// <summary>The plans that were shot, made anew by the fit with the new frames.</summary>
    private static ImmutableArray<FramesNeededAnswer> Again(KeptReport report, string fit, FrameTable frames, string? save, Desk desk)
    {
        var file = InputFile.Open(fit, desk);
        var json =
            file.SavedFit
            ?? throw new UsageException($"{file.Name} is no saved fit.", "Save one with `handhold fit TABLE --save FIT.json`.");
        var before = Waiting.For(desk, "Fitting again", progress => SavedFit.Read(json, progress, desk.Cancellation));
        var after = Waiting.For(desk, "Fitting with the new frames", progress => before.FitWith(frames, progress, desk.Cancellation));
        if (save is not null)
            WholeFile.WriteText(save, SavedFit.Write(after) + "\n");
        return
        [
            .. report
                .Shoots.Select(s => s.Plan)
                .Distinct()
                .SelectMany(plan => after.Where(c => c.Key.ToString() == plan.Key.ToString()).Select(curve => Anew(curve, plan, desk))),
        ];
    }

    private static FramesNeededAnswer Anew(KeeperCurve curve, PlannedShoot plan, Desk desk) =>
        curve.FramesNeeded(
            plan.At,
            plan.Keepers,
            plan.WantedAssurance,
            AnswerOptions.Default with
            {
                Conditions = plan.Conditions,
                BurstsOf = plan.Bursts.Length > 1 ? plan.Bursts[0] : null,
                BeyondTested = true,
            },
            desk.Cancellation
        );
}
