using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Handhold;
using Handhold.Laws;

// The full form of the laws: hours. Writes its pages into a folder; exits 1 when a law is broken.
// Plans kept go on where a run was stopped: their worlds are remembered in artifacts/laws.
const int Threads = 2;
const int Step = 100;
const double Allowance = 0.005;
if (args.Length is < 1 or > 3)
{
    await Console.Error.WriteLineAsync(
        "Usage: dotnet run -c Release --project laws/Handhold.Laws -- docs/laws [worlds, default 20000] [plans, misfit, misfit-levels, tables, fits, coverage, posterior, effects, levels, calibration or experiment, default all]"
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
        Ledger ledger = new(Path.Combine("artifacts", "laws"), design.Name);
        designs.Add((design, 0, []));
        while (designs[^1].Worlds < count)
        {
            var tested = ledger.Worlds.Count;
            ledger.Add(PlansKept.Run(design, tested, Math.Clamp(count - tested, 0, Step), Threads, Planning.AfterTest));
            Console.WriteLine($"Plans kept: {ledger.Worlds.Count} of {count} worlds tested in {design.Name}");
            designs[^1] = (design, ledger.Worlds.Count, PlansKeptReport.Margins(ledger.Worlds));
            await File.WriteAllTextAsync(Path.Combine(folder, "plans-kept.md"), PlansKeptReport.Page(Allowance, designs));
        }
        broken.AddRange(designs[^1].Margins.Where(m => !m.Holds(Allowance)).Select(m => $"{design.Name}: {m.Group}"));
    }
}

if (only is null or "misfit")
{
    Console.WriteLine("Alarms of misfit");
    var (alarms, dipped) = (Misfit.FalseAlarms(worlds, Threads), worlds / 50);
    var powers = Misfit.FramesASpeed.Select(n => (n, Power(n, Misfit.Dips[0]), Power(n, Misfit.Dips[1])));
    await File.WriteAllTextAsync(Path.Combine(folder, "curve-does-not-fit.md"), MisfitReport.Page(worlds, alarms, dipped, powers));
    if (alarms > 0.01)
    {
        broken.Add($"misfit alarms in {alarms:P2}");
    }

    double Power(int frames, double dip) => Misfit.Power(frames, dip, dipped, Threads);
}

if (only is null or "misfit-levels")
{
    var (clubs, dipped) = (worlds / 50, worlds / 200);
    Console.WriteLine($"Alarms of misfit where levels vary: {clubs} clubs, then {dipped} with each dip");
    var alarms = LevelMisfit.Alarms(clubs, Threads);
    var powers = LevelMisfit.Dips.Select(dip => (dip, LevelMisfit.Alarms(dipped, Threads, dip)));
    await File.WriteAllTextAsync(Path.Combine(folder, "levels-do-not-fit.md"), LevelMisfitReport.Page(clubs, alarms, dipped, powers));
    if (alarms > 0.01)
    {
        broken.Add($"misfit alarms where levels vary in {alarms:P2}");
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
    await Exposures();
}

if (only is null or "posterior")
{
    await Posteriors();
}

if (only is null or "experiment")
{
    StringBuilder page = new(ExperimentReport.Head(worlds));
    foreach (var experiment in Experiment.All)
    {
        Console.WriteLine($"Promises: {experiment.Title}");
        var outcomes = experiment.Run(worlds / 10, Threads);
        page.Append(ExperimentReport.Section(experiment, outcomes));
        broken.AddRange(ExperimentReport.Broken(experiment, outcomes));
        await Save();
    }
    foreach (var economy in Economy.All)
    {
        Console.WriteLine($"Cost: {economy.Title}");
        var rows = economy.Run(worlds / 10, Threads);
        page.Append(ExperimentReport.Section(economy, worlds / 10, rows));
        broken.AddRange(ExperimentReport.Broken(economy, rows));
        await Save();
    }

    Task Save() => File.WriteAllTextAsync(Path.Combine(folder, "promises.md"), page.ToString().TrimEnd('\n') + "\n");
}

if (only is null or "effects")
{
    await Effects();
}

if (only is null or "levels")
{
    await Levels();
}

if (only is null or "calibration")
{
    await Calibration();
}

Console.WriteLine(broken.Count == 0 ? "All laws hold." : $"Broken: {string.Join("; ", broken)}");
return broken.Count == 0 ? 0 : 1;

async Task Levels()
{
    var each = worlds / PooledAlarms.Structures.Length;
    List<(string Structure, int Fits, ImmutableSortedDictionary<string, int> Told)> parts = [];
    for (var structure = 0; structure < PooledAlarms.Structures.Length; structure++)
    {
        Console.WriteLine($"Alarms: {PooledAlarms.Structures[structure].Name}");
        parts.Add((PooledAlarms.Structures[structure].Name, each, PooledAlarms.Count(structure, each, Threads)));
        await File.WriteAllTextAsync(Path.Combine(folder, "levels-that-vary.md"), PooledAlarmsReport.Page(parts));
    }
    if (parts.Sum(p => p.Told.Values.Sum()) >= PooledAlarms.Allowed * parts.Sum(p => p.Fits))
    {
        broken.Add("alarms of levels that vary");
    }
}

async Task Exposures()
{
    (double Slope, double Half)[] curves = [.. from slope in Coverage.Slopes from off in Coverage.Halves select (slope, off)];
    (double Slope, double Half)[] steps = [.. from slope in Coverage.Slopes from i in Enumerable.Range(-30, 61) select (slope, 0.05 * i)];
    List<(Estimator Estimator, int Frames, int? Tests, ImmutableArray<Coverage.Point> Points)> parts = [];
    foreach (var estimator in new[] { Estimator.BiasReduced, Estimator.Likelihood })
    {
        foreach (var frames in Coverage.FramesASpeed)
        {
            Console.WriteLine($"Coverage: {estimator}, {frames} frames a speed");
            var all = frames == Coverage.FramesASpeed[0];
            var points = all
                ? Coverage.Enumerated(estimator, frames, curves, Threads)
                : Coverage.Simulated(estimator, frames, curves, worlds / 5, Threads);
            parts.Add((estimator, frames, all ? null : worlds / 5, points));
        }
    }
    broken.AddRange(
        parts[0]
            .Points.Where(p => p.Half <= 0.5 && p.Covered.Any(c => c < CoverageReport.Least))
            .Select(p => $"bias-reduced covers too little at {p.Slope}, {p.Half}")
    );
    var swept = Coverage.Enumerated(Estimator.BiasReduced, Coverage.FramesASpeed[0], steps, Threads);
    await File.WriteAllTextAsync(Path.Combine(folder, "coverage.md"), CoverageReport.Page(parts, swept));
}

async Task Posteriors()
{
    const int AtATime = 100;
    var covered = Coverage.Rates.Select(_ => new List<(bool IsIn, double Claimed)>()).ToArray();
    for (var done = 0; done < worlds / 5; done = covered[0].Count)
    {
        var more = Coverage.OverThePrior(done, Math.Min(AtATime, worlds / 5 - done), threads: 1);
        ImmutableArray<(double Covered, double Claimed)> shares =
        [
            .. covered.Zip(
                more,
                (list, some) =>
                {
                    list.AddRange(some);
                    return (list.Average(w => w.IsIn ? 1.0 : 0), list.Average(w => w.Claimed));
                }
            ),
        ];
        Console.WriteLine($"Coverage: posterior in {covered[0].Count} worlds");
        await File.WriteAllTextAsync(Path.Combine(folder, "coverage-posterior.md"), CoverageReport.PosteriorPage(shares, covered[0].Count));
        if (covered[0].Count >= worlds / 5)
        {
            broken.AddRange(
                shares
                    .Where(c => Math.Abs(c.Covered - c.Claimed) > Math.Max(0.005, 3 * Math.Sqrt(0.95 * 0.05 / covered[0].Count)))
                    .Select(c => $"posterior covers {c.Covered:P1} where {c.Claimed:P1} is claimed")
            );
        }
    }
}

async Task Calibration()
{
    var clubs = worlds / 20;
    var parameters = LevelCalibration.Shares(0, Math.Min(Step, clubs));
    for (var done = parameters[0].Shares.Length; ; done = parameters[0].Shares.Length)
    {
        Console.WriteLine($"Calibration of levels: {done} of {clubs} clubs");
        await File.WriteAllTextAsync(Path.Combine(folder, "levels-calibration.md"), LevelCalibrationReport.Page(parameters));
        if (done >= clubs)
        {
            break;
        }

        var more = LevelCalibration.Shares(done, Math.Min(Step, clubs - done));
        parameters = [.. parameters.Zip(more, (all, next) => (all.Name, all.Shares.AddRange(next.Shares)))];
    }

    broken.AddRange(
        parameters.Where(p => LevelCalibration.Distance(p.Shares) > LevelCalibrationReport.Allowed).Select(p => $"calibration of {p.Name}")
    );
}

async Task Effects()
{
    const int AtATime = 100;
    List<(string Test, ImmutableSortedDictionary<string, ImmutableArray<bool>> Covered)> tests = [];
    for (var test = 0; test < EffectsInStops.Tests.Length; test++)
    {
        var covered = ImmutableSortedDictionary<string, ImmutableArray<bool>>.Empty;
        tests.Add((EffectsInStops.Tests[test].Name, covered));
        for (var done = 0; done < worlds / 10; done += AtATime)
        {
            foreach (var (effect, more) in EffectsInStops.Covered(test, done, Math.Min(AtATime, worlds / 10 - done), Threads))
            {
                covered = covered.SetItem(effect, [.. covered.GetValueOrDefault(effect, []), .. more]);
            }
            tests[test] = (tests[test].Test, covered);
            Console.WriteLine($"Effects in stops: {done + AtATime} worlds of {tests[test].Test}");
            await File.WriteAllTextAsync(Path.Combine(folder, "effects-in-stops.md"), EffectsInStopsReport.Page(tests));
        }
        broken.AddRange(covered.Where(c => !EffectsInStopsReport.Holds(c.Value)).Select(c => $"interval of {c.Key}"));
    }
}
