using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using BenchmarkDotNet.Reports;

namespace Handhold.Benchmarks;

/// <summary>benchmarks/RESULTS.md, from one run.</summary>
internal sealed class Results(string loadBefore)
{
    private readonly StringBuilder _text = new();
    private string _processor = "";

    internal void Add(string title, Summary summary)
    {
        _processor = CpuName(summary);
        var rows = summary.Reports.Where(r => r.ResultStatistics is not null && !(IsC(r) && !PlainC.IsHere)).ToArray();
        var unit = Array.Find(rows, r => r.BenchmarkCase.Descriptor.Baseline);
        Line($"## {title}");
        Line($"");
        Line($"| | median, µs | times {(unit is null ? "the baseline, which did not run" : Name(unit))} | bytes allocated |");
        Line($"|---|---:|---:|---:|");
        foreach (var row in rows)
            Line(
                $"| {Name(row)} | {Micro(row):G4} | {(unit is null ? double.NaN : Micro(row) / Micro(unit)):G3} | {row.GcStats.GetBytesAllocatedPerOperation(row.BenchmarkCase)} |"
            );
        Line($"");
    }

    internal void AddCurves(double one, double two)
    {
        Line($"## Ten thousand curves");
        Line($"");
        Line(
            $"Bias-reduced fits of 10 000 curves of 9 speeds by 6 frames, table to curves, medians of 7, a collector for servers, without a thread of its own: {one:F0} ms on one core, {two:F0} ms on two, {one / two:F2} times faster."
        );
        Line($"");
    }

    internal void Write() =>
        File.WriteAllText(
            Path.Combine(Repository.Root, "benchmarks", "RESULTS.md"),
            Text(
                $"""
                # What fits and answers cost

                Written by `dotnet run -c Release --project benchmarks/Handhold.Benchmarks -- results`. Compare ratios, which were taken in one run; times are this machine's.

                * {DateTimeOffset.UtcNow:yyyy-MM-dd}, commit {Repository.Commit()}
                * {_processor}, {Environment.ProcessorCount} cores; {RuntimeInformation.OSDescription}; {RuntimeInformation.FrameworkDescription}
                * load average {loadBefore} before, {Repository.Load()} after: above {Environment.ProcessorCount} others kept the cores busy
                * medians of 11 runs (one curve and its answers) and of 100 (exact fits), each of 2 ms or one call

                The table is one curve of nine speeds by six frames, in two bursts of 3 a speed, simulated. All fits climb from even odds; each exact fit of ours and the C also find covariance,
                log-likelihood and deviance.


                """
            )
                + _text.ToString().TrimEnd()
                + "\n"
        );

    private static bool IsC(BenchmarkReport row) => row.BenchmarkCase.Descriptor.WorkloadMethod.Name == nameof(ExactFits.C);

    private static string Name(BenchmarkReport row) => row.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo.Trim('\'');

    private static double Micro(BenchmarkReport row) => row.ResultStatistics!.Median / 1000;

    private static string CpuName(Summary summary) => summary.HostEnvironmentInfo.Cpu.Value?.ProcessorName ?? "unknown processor";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private void Line(FormattableString text) => _text.Append(Text(text)).Append('\n');
}
