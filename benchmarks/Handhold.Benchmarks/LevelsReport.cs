using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Handhold.Solvers;

namespace Handhold.Benchmarks;

/// <summary>benchmarks/LEVELS.md and its picture.</summary>
internal sealed class LevelsReport
{
    private const int Thousand = 1000;
    private static readonly int[] s_photographers = [100, 300, 1000, 3000, 10_000];

    private readonly StringBuilder _text = new();

    internal static void Write()
    {
        LevelsReport report = new();
        var before = Repository.Load();
        report.Line($"# What levels fitted together cost");
        report.Line($"");
        report.Line($"Written by `dotnet run -c Release --project benchmarks/Handhold.Benchmarks -- levels`.");
        report.Line($"");
        report.Thousands();
        report.Growth();
        report.Crossed();
        report.Posterior();
        report.Line($"");
        report.Line($"* {DateTimeOffset.UtcNow:yyyy-MM-dd}, commit {Repository.Commit()}");
        report.Line($"* {Environment.ProcessorCount} cores; {RuntimeInformation.OSDescription}; {RuntimeInformation.FrameworkDescription}");
        report.Line(
            $"* load average {before} before, {Repository.Load()} after: above {Environment.ProcessorCount} others kept the cores busy, and the clock tells of them too"
        );
        File.WriteAllText(Path.Combine(Repository.Root, "benchmarks", "LEVELS.md"), report._text.ToString());
        Console.Write(report._text);
    }

    private void Thousands()
    {
        var (table, others) = (ManyLevels.Table(Thousand), ManyLevels.Others());
        var problem = ManyLevels.Problem(table);
        GroupedFit fit = new(problem, nodes: null);
        KeeperCurve curve = ManyLevels.Nested.Fit(table).Only;
        Line($"## A thousand photographers");
        Line($"");
        Line(
            $"1000 invented photographers x 4 setups x 9 speeds x 10 frames (`shared/golden/grouped-thousand`): {problem.Rows.Rows} rows, {fit.Problem.Effects.Sum(e => e.Levels)} levels, intercepts of photographers and of setups within them. Best of 15 runs, ms."
        );
        Line($"");
        Line($"| | by the clock | of all threads |");
        Line($"|---|---:|---:|");
        Row("the solver: coefficients, spreads, their covariance; rows at hand", () => _ = new GroupedFit(problem, nodes: null));
        Row("of that: one log-likelihood with its gradient, from zero", One(fit));
        Row("of that: the fit without levels it starts from", () => BinomialSolver.Likelihood(problem.Rows));
        Row("the whole fit, table to curve", () => _ = ManyLevels.Nested.Fit(table).Only);
        Row(
            "after it: effects of all levels and profile intervals of both sds",
            () => _ = new LinearFit(curve.Linear!.Likelihood, [.. table], 0.95).Groups.Length
        );
        Line($"");
        var theirs = others.GetProperty("secondsByDefault");
        Line(
            $"The log-likelihood is {fit.LogLikelihood:F7}; lme4 finds {others.GetProperty("lme4").GetProperty("logLikelihood").GetDouble():F7} and glmmTMB {others.GetProperty("glmmTMB").GetProperty("logLikelihood").GetDouble():F7} with stopping rules as tight as they go. With their default settings, once, on the machine the golden case was made on: glmmTMB {theirs.GetProperty("glmmTMB").GetDouble():F1} s, lme4 {theirs.GetProperty("lme4").GetDouble():F1} s, both with standard errors of the coefficients."
        );
        Line($"");
    }

    private void Growth()
    {
        Line($"## From a hundred photographers to ten thousand");
        Line($"");
        Line($"The same photographers over and over. Best of 5 runs; memory is what stays.");
        Line($"");
        Line(
            $"| photographers | rows | solver, ms | of all threads, ms | table to curve, ms | bytes a row: table | rows as numbers | likelihood |"
        );
        Line($"|---:|---:|---:|---:|---:|---:|---:|---:|");
        List<(double Photographers, double Time)> grown = [];
        foreach (var photographers in s_photographers)
        {
            FrameTable? table = null;
            double ofTable = ManyLevels.Kept(() => table = ManyLevels.Table(photographers));
            var problem = ManyLevels.Problem(table!);
            var rows = problem.Rows.Rows;
            OrthonormalDesign design = new(problem.Rows);
            double ofLikelihood = ManyLevels.Kept(() =>
                new GroupedParts(problem, new(design, []), [.. problem.Effects.Select(e => EffectBasis.Of(e, 0))])
            );
            var (clock, processor) = ManyLevels.Least(5, () => _ = new GroupedFit(problem, nodes: null));
            var whole = ManyLevels.Least(3, () => _ = ManyLevels.Nested.Fit(table!).Only).Clock;
            double numbers = problem.Rows.Columns.Length * sizeof(double) + (2 + problem.Effects.Length) * sizeof(int);
            Line(
                $"| {photographers} | {rows} | {clock:F1} | {processor:F1} | {whole:F0} | {ofTable / rows:F0} | {numbers:F0} | {ofLikelihood / rows:F0} |"
            );
            grown.Add((photographers, processor));
        }
        var exponent = Exponent(grown);
        Line($"");
        Line($"Time of all threads grows with the power {exponent:F2} of photographers.");
        Line($"");
        Line($"![{GrowthPicture.AlternativeText(exponent)}](../docs/pictures/growth.png)");
        Line($"");
        GrowthPicture.Save([.. grown], exponent);
    }

    private void Crossed()
    {
        Line($"## Crossed");
        Line($"");
        Line(
            $"Photographers who use four of some lenses, a lens the same in all hands. Its levels are eliminated last and fill in: rows cost as above, and the lenses of the most entangled structures the square of their number in memory and its cube in time. Best of 3 runs, ms of all threads."
        );
        Line($"");
        Line($"| photographers | with 4 lenses in all hands | with as many lenses as photographers |");
        Line($"|---:|---:|---:|");
        foreach (var photographers in (int[])[128, 256, 512, 1024])
        {
            var few = ManyLevels.Least(3, () => _ = new GroupedFit(ManyLevels.Crossed(photographers, 4), nodes: null)).Processor;
            var many =
                photographers > 512
                    ? double.NaN
                    : ManyLevels
                        .Least(3, () => _ = new GroupedFit(ManyLevels.Crossed(photographers, photographers), nodes: null))
                        .Processor;
            Line(
                $"| {photographers} | {few:F0} | {(double.IsNaN(many) ? "not measured" : many.ToString("F0", CultureInfo.InvariantCulture))} |"
            );
        }
    }

    private void Posterior()
    {
        Line($"");
        Line($"## By the posterior");
        Line($"");
        Line(
            $"The first of those photographers; half points vary between them and between their setups, beside the luck of days and bursts, with a ceiling. One run, s."
        );
        Line($"");
        Line($"| photographers | rows | levels | the fit, by the clock | of all threads | all levels, by the clock | of all threads |");
        Line($"|---:|---:|---:|---:|---:|---:|---:|");
        List<(double Photographers, double Time)> grown = [];
        ManyLevels.InStops.Fit(ManyLevels.Table(3));
        foreach (var photographers in (int[])[6, 12, 25, 50, 100])
        {
            var table = ManyLevels.Table(photographers);
            KeeperCurve? curve = null;
            var fit = ManyLevels.Once(() => curve = ManyLevels.InStops.Fit(table).Only);
            var told = ManyLevels.Once(() => _ = curve!.Levels.Sum(l => l.Levels.Length));
            Line(
                $"| {photographers} | {table.Count} | {curve!.Levels.Sum(l => l.Levels.Length)} | {fit.Clock / 1000:F1} | {fit.Processor / 1000:F1} | {told.Clock / 1000:F1} | {told.Processor / 1000:F1} |"
            );
            grown.Add((photographers, fit.Processor));
        }

        Line($"");
        Line($"Time of all threads grows with the power {Exponent(grown):F2} of photographers.");
    }

    private static Action One(GroupedFit fit)
    {
        var gradient = new double[fit.Top.Length];
        return () => fit.Likelihood([], fit.Bases).At(fit.Top, gradient);
    }

    private void Row(string what, Action work)
    {
        var (clock, processor) = ManyLevels.Least(15, work);
        Line($"| {what} | {clock:F1} | {processor:F1} |");
    }

    /// <summary>The slope of a straight line through the logarithms.</summary>
    private static double Exponent(IEnumerable<(double Size, double Time)> points)
    {
        (double X, double Y)[] logs = [.. points.Select(p => (Math.Log(p.Size), Math.Log(p.Time)))];
        var (x, y) = (logs.Average(l => l.X), logs.Average(l => l.Y));
        return logs.Sum(l => (l.X - x) * (l.Y - y)) / logs.Sum(l => (l.X - x) * (l.X - x));
    }

    private void Line(FormattableString text) => _text.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
