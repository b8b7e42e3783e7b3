using System.Collections.Immutable;
using System.Globalization;
using Handhold;
using Handhold.Laws;

// The full form of the laws: hours. Writes plans-kept.md and curve-does-not-fit.md into a folder; exits 1 when a law is broken.
const int Threads = 2;
const int Step = 500;
const double Allowance = 0.005;
if (args.Length is < 1 or > 3)
{
    await Console.Error.WriteLineAsync(
        "Usage: dotnet run -c Release --project laws/Handhold.Laws -- docs/laws [worlds, default 20000] [plans, tables, fits or coverage, default all]"
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

if (only is null or "coverage")
{
    await Coverages();
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

async Task Coverages()
{
    (double Slope, double Half)[] curves = [.. from slope in Coverage.Slopes from half in Coverage.Halves select (slope, half)];
    List<(Estimator, int, int?, ImmutableArray<Coverage.Point>)> parts = [];
    foreach (var estimator in new[] { Estimator.BiasReduced, Estimator.Likelihood })
    {
        foreach (var frames in Coverage.FramesASpeed)
        {
            int? tests = frames == Coverage.FramesASpeed[0] ? null : worlds / 5;
            Console.WriteLine($"Coverage: {estimator}, {frames} frames a speed");
            var points = tests is { } count
                ? Coverage.Simulated(estimator, frames, curves, count, Threads)
                : Coverage.Enumerated(estimator, frames, curves, Threads);
            parts.Add((estimator, frames, tests, points));
            if (tests is null && estimator == Estimator.BiasReduced)
            {
                broken.AddRange(
                    points.Where(p => p.Covered.Any(c => c < 0.93)).Select(p => $"bias-reduced covers too little at {p.Slope}, {p.Half}")
                );
            }
            await Write([], 0);
        }
    }
    (List<bool> ofHalf, List<bool> ofMost) = ([], []);
    while (ofHalf.Count < worlds / 5)
    {
        var more = Coverage.OverThePrior(ofHalf.Count, Math.Min(Step, worlds / 5 - ofHalf.Count), Threads);
        ofHalf.AddRange(more[0]);
        ofMost.AddRange(more[1]);
        Console.WriteLine($"Coverage: posterior in {ofHalf.Count} worlds");
        await Write([Share(ofHalf), Share(ofMost)], ofHalf.Count);
    }

    static double Share(List<bool> covered) => covered.Count(c => c) / (double)covered.Count;
    Task Write(ImmutableArray<double> overThePrior, int drawn) =>
        File.WriteAllTextAsync(Path.Combine(folder, "coverage.md"), CoverageReport.Page(parts, overThePrior, drawn));
}
