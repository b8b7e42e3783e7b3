using System.Collections.Immutable;
using System.Globalization;
using Handhold.Laws;

// The full form of the laws: hours. Writes plans-kept.md and curve-does-not-fit.md into a folder; exits 1 when a law is broken.
const int Threads = 2;
const int Step = 500;
const double Allowance = 0.005;
if (args.Length is < 1 or > 3)
{
    await Console.Error.WriteLineAsync(
        "Usage: dotnet run -c Release --project laws/Handhold.Laws -- docs/laws [worlds, default 20000] [plans, tables or fits, default all]"
    );
    return 2;
}
var folder = args[0];
var worlds = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20_000;
var only = args.Length > 2 ? args[2] : null;
List<string> broken = [];

if (only is null or "plans")
{
    List<(TestDesign Design, int Worlds, ImmutableArray<Margin> Margins)> designs = [];
    foreach (var design in TestDesign.All)
    {
        var count = design == TestDesign.TwoBurstsOfThree ? worlds : worlds / 10;
        List<IReadOnlyList<Outcome>> outcomes = [];
        designs.Add((design, 0, []));
        while (outcomes.Count < count)
        {
            outcomes.AddRange(PlansKept.Run(design, outcomes.Count, Math.Min(Step, count - outcomes.Count), Threads, Planning.AfterTest));
            Console.WriteLine($"Plans kept: {outcomes.Count} of {count} worlds tested in {design.Name}");
            designs[^1] = (design, outcomes.Count, PlansKeptReport.Margins(outcomes));
            await File.WriteAllTextAsync(Path.Combine(folder, "plans-kept.md"), PlansKeptReport.Page(Allowance, designs));
        }
        broken.AddRange(designs[^1].Margins.Where(m => !m.Holds(Allowance)).Select(m => $"{design.Name}: {m.Group}"));
        if (design == TestDesign.TwoBurstsOfThree)
        {
            await Misfits(outcomes);
        }
    }
}

if (only is null or "tables")
{
    Console.WriteLine("Random tables");
    broken.AddRange(AnyTable.Faults(worlds / 4, Threads));
}

if (only is null or "fits")
{
    Console.WriteLine("Random fits");
    broken.AddRange(AnyFit.Faults(5 * worlds, Threads));
}

Console.WriteLine(broken.Count == 0 ? "All laws hold." : $"Broken: {string.Join("; ", broken)}");
return broken.Count == 0 ? 0 : 1;

async Task Misfits(IReadOnlyCollection<IReadOnlyList<Outcome>> outcomes)
{
    var (alarms, dipped) = (Misfit.FalseAlarms(outcomes), worlds / 40);
    var powers = Misfit.FramesASpeed.Select(frames => (frames, Misfit.Power(frames, dipped, Threads)));
    await File.WriteAllTextAsync(Path.Combine(folder, "curve-does-not-fit.md"), MisfitReport.Page(outcomes.Count, alarms, dipped, powers));
    if (alarms > 0.01)
    {
        broken.Add($"misfit alarms in {alarms:P2}");
    }
}
