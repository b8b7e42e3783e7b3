using System.Diagnostics;
using System.Globalization;
using Handhold.Plots;

namespace Handhold.Benchmarks;

/// <summary>A thousand pictures in one process: whether they leave memory behind; writes benchmarks/PICTURES.md.</summary>
internal static class ManyPictures
{
    private const int Few = 100;
    private const int Many = 1000;

    internal static void Measure()
    {
        var curve = Pictures.Fit(KeeperModel.Default with { Estimator = Estimator.BiasReduced });
        var folder = Directory.CreateTempSubdirectory("handhold-pictures-");
        try
        {
            var (few, ms) = Draw(Few);
            var (many, _) = Draw(Many - Few);
            var text = string.Create(
                CultureInfo.InvariantCulture,
                $"""
                # What pictures leave behind

                Written by `dotnet run -c Release --project benchmarks/Handhold.Benchmarks -- pictures`.

                * {DateTimeOffset.UtcNow:yyyy-MM-dd}, commit {Repository.Commit()}

                One bias-reduced keeper curve, drawn anew and saved as a PNG and an SVG of 1200 x 800 each time, {ms:F0} ms a time. Memory of the process after collecting, and of the managed heap in it:

                | pictures | process, MB | managed, MB |
                |---:|---:|---:|
                | {Few} | {few.Process / 1e6:F1} | {few.Managed / 1e6:F2} |
                | {Many} | {many.Process / 1e6:F1} | {many.Managed / 1e6:F2} |

                After {Many} the process holds {(double)many.Process / few.Process:P1} of what it held after {Few}; 110 % is allowed.

                """
            );
            File.WriteAllText(Path.Combine(Repository.Root, "benchmarks", "PICTURES.md"), text);
            Console.Write(text);
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        ((long Process, long Managed) Memory, double Milliseconds) Draw(int count)
        {
            var clock = Stopwatch.StartNew();
            for (var i = 0; i < count; i++)
            {
                using var plot = KeeperCurvePlot.Draw(curve);
                plot.SavePicture(Path.Combine(folder.FullName, "curve.png"));
                plot.SavePicture(Path.Combine(folder.FullName, "curve.svg"));
            }

            var each = clock.Elapsed.TotalMilliseconds / count;
            return (Memory(), each);
        }
    }

    private static (long Process, long Managed) Memory()
    {
        for (var i = 0; i < 3; i++)
        {
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
            GC.WaitForPendingFinalizers();
        }

        using var process = Process.GetCurrentProcess();
        return (process.WorkingSet64, GC.GetTotalMemory(forceFullCollection: true));
    }
}
