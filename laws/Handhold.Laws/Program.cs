using System.Globalization;
using Handhold.Laws;

// The full form of the laws. Writes docs/laws/plans-kept.md and docs/laws/curve-does-not-fit.md; exits 1 when a law is broken.
const double Allowance = 0.005;
if (args.Length is not (1 or 2))
{
    await Console.Error.WriteLineAsync("Usage: dotnet run -c Release --project laws/Handhold.Laws -- docs/laws [worlds]");
    return 2;
}
var worlds = args.Length == 2 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20_000;
const int Threads = 2;

var designs = TestDesign
    .All.Select(design =>
    {
        Console.WriteLine($"{worlds} worlds, tested in {design.Name}");
        return (design, margins: PlansKeptReport.Margins(PlansKept.Run(design, worlds, Threads, Planning.AfterTest)));
    })
    .ToArray();
await File.WriteAllTextAsync(Path.Combine(args[0], "plans-kept.md"), PlansKeptReport.Page(worlds, Allowance, designs));

Console.WriteLine("Misfit alarms");
var alarms = Misfit.FalseAlarms(TestDesign.TwoBurstsOfThree, worlds / 2, Threads);
var powers = Misfit.FramesASpeed.Select(frames => (frames, Misfit.Power(frames, worlds / 20, Threads)));
await File.WriteAllTextAsync(Path.Combine(args[0], "curve-does-not-fit.md"), MisfitReport.Page(worlds / 2, alarms, worlds / 20, powers));

var broken = designs.SelectMany(d => d.margins.Where(m => !m.Holds(Allowance)).Select(m => $"{d.design.Name}: {m.Group}")).ToList();
if (alarms > 0.01)
{
    broken.Add("misfit alarms");
}
Console.WriteLine(broken.Count == 0 ? "All laws hold." : $"Broken: {string.Join("; ", broken)}");
return broken.Count == 0 ? 0 : 1;
