using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Randomness;
using Handhold.Simulation;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary><c>handhold simulate</c>: invented frames of a known curve, of a saved fit, or of hands in motion.</summary>
internal static class SimulateVerb
{
    public static Command Build(Desk desk)
    {
        var fit = new Argument<string>("FIT")
        {
            Description = "A saved fit whose medians are the truth; without it the curve is given by --half and what follows.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var (world, shoot, json) = (new WorldOptions(), new ShootOptions(), Shared.Json());
        var command = new Command(
            "simulate",
            "Invent frames of a known curve, a saved fit, or hands in motion: to learn with, and to test plans on."
        )
        {
            fit,
            json,
        };
        foreach (var option in world.All.Concat(shoot.All))
            command.Options.Add(option);
        command.SetAction(given =>
        {
            var seed = Seed.From(shoot.Seed(given));
            ImmutableArray<(Conditions Conditions, Func<ShootPlan, RandomStream, FrameTable> Shoot)> shooters = given.Has(fit)
                ? [.. OfFit(given, fit, world, desk)]
                : [(Conditions.None, world.Shooter(given))];
            FrameTable frames = [.. shooters.SelectMany((s, i) => s.Shoot(shoot.Plan(given, s.Conditions), seed.Stream(i)))];
            if (given.GetValue(shoot.Out) is { } path)
            {
                using var text = new StringWriter();
                TableWriter.Write(frames, text);
                WholeFile.WriteText(path, text.ToString());
                if (given.GetValue(json))
                    Json.Files(desk, [path]);
                else
                    Say.OutputPage(desk).Text($"Wrote {Plain.Of(frames.Count, "invented frame")} to {path}.");
            }
            else
                TableWriter.Write(frames, desk.Output);
            return (int)ExitCode.Done;
        });
        return command;
    }

    private static IEnumerable<(Conditions, Func<ShootPlan, RandomStream, FrameTable>)> OfFit(
        ParseResult given,
        Argument<string> fit,
        WorldOptions world,
        Desk desk
    )
    {
        world.RefuseAll(given);
        var file = InputFile.Open(given.GetRequiredValue(fit), desk);
        var json =
            file.SavedFit
            ?? throw new UsageException(
                $"{file.Name} is a table, and frames are invented from a curve.",
                "Save a fit first: `handhold fit TABLE --save FIT.json`."
            );
        var curves = Waiting.For(desk, "Fitting again", progress => SavedFit.Read(json, progress, desk.Cancellation));
        foreach (var curve in curves)
        {
            var truth = World.Of(curve);
            var conditions = curve.Key.Values.Aggregate(
                curve.Data.Cells[0].Conditions with
                {
                    Session = null,
                    Burst = null,
                    BurstPosition = null,
                },
                (c, value) => c.With(value.Key, value.Value)
            );
            yield return (conditions, truth.Shoot);
        }
    }
}
