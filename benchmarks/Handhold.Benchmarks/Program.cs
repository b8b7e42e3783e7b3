using System.Globalization;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Handhold.Benchmarks;
using Perfolizer.Horology;

// Short iterations, most of which nothing else interrupts: the median is little moved by what else the machine does. The warm-up outlasts the compiler's tiers.
var quick = Config(warmups: 500, iterations: 100);
var slow = Config(warmups: 1, iterations: 11);

switch (args)
{
    case ["curves"]:
        Console.Write(ManyCurves.Measure().ToString(CultureInfo.InvariantCulture));
        return;
    case ["levels"]:
        LevelsReport.Write();
        return;
    case ["photographs"]:
        ManyPhotographs.Measure();
        return;
    case ["pictures"]:
        ManyPictures.Measure();
        return;
    case ["results"]:
        Results results = new(Repository.Load());
        results.Add("One curve and its answers", BenchmarkRunner.Run<OneCurve>(slow));
        results.Add("Exact fits", BenchmarkRunner.Run<ExactFits>(quick));
        results.AddCurves(ManyCurves.MeasureOn(1), ManyCurves.MeasureOn(2));
        results.Write();
        return;
    default:
        BenchmarkSwitcher.FromTypes([typeof(OneCurve), typeof(ExactFits), typeof(Pictures)]).Run(args, quick);
        return;
}

static IConfig Config(int warmups, int iterations) =>
    DefaultConfig
        .Instance.AddJob(
            Job.Default.WithToolchain(new InProcessEmitToolchain(TimeSpan.FromHours(1), logOutput: true))
                .WithWarmupCount(warmups)
                .WithIterationCount(iterations)
                .WithIterationTime(TimeInterval.FromMilliseconds(2))
        )
        .WithArtifactsPath(Path.Combine(Repository.Root, "artifacts", "benchmarks"));
