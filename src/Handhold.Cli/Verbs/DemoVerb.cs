using System.CommandLine;
using Handhold.Plots;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary><c>handhold demo</c>: the whole job on invented data.</summary>
internal static class DemoVerb
{
    private const string TableName = "clock-museum.csv";

    public static Command Build(Desk desk)
    {
        var folder = new Argument<string>("FOLDER")
        {
            Description = "Where to put the table and the pictures [handhold-demo].",
            DefaultValueFactory = _ => "handhold-demo",
        };
        var json = Shared.Json();
        var command = new Command("demo", "Do the whole job on an invented table: a museum of clocks where tripods are not allowed.")
        {
            folder,
            json,
        };
        command.SetAction(given =>
        {
            var place = Directory.CreateDirectory(given.GetRequiredValue(folder)).ToString();
            var table = Path.Combine(place, TableName);
            WholeFile.WriteText(table, Museum());
            using var reader = new StringReader(Museum());
            var curves = Waiting.For(
                desk,
                "Fitting",
                progress => KeeperModel.Default.Fit(TableReader.Read(reader, TableName), progress, desk.Cancellation)
            );
            var fit = Path.Combine(place, "clock-museum.json");
            WholeFile.WriteText(fit, SavedFit.Write(curves) + "\n");
            var pictures = Pictures.Write(
                [.. curves],
                Path.ChangeExtension(table, ".png"),
                (1200, 800),
                desk,
                c => KeeperCurvePlot.Draw(c)
            );
            if (given.GetValue(json))
                Json.Files(desk, [table, fit, .. pictures]);
            else
                DemoTale.Tell(Say.OutputPage(desk), curves, table, fit, pictures);
            return (int)ExitCode.Done;
        });
        return command;
    }

    private static string Museum()
    {
        using var stream = typeof(DemoVerb).Assembly.GetManifestResourceStream(TableName)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
