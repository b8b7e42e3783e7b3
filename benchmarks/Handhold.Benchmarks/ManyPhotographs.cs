using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Handhold.Photos;

namespace Handhold.Benchmarks;

/// <summary>Ten thousand sparse photographs of 6 MB, read by one thread and by two; writes benchmarks/PHOTOGRAPHS.md.</summary>
internal static class ManyPhotographs
{
    private const int Files = 10_000;
    private const long Size = 6_000_000;
    private const int Folders = 20;
    private const int Repeats = 25;

    internal static void Measure()
    {
        var folder = Directory.CreateTempSubdirectory("handhold-photographs-");
        try
        {
            Fill(folder);
            var before = Repository.Load();
            var best = Best(() => Read(folder, 1), () => Read(folder, 2), () => Open(folder));
            var (one, two, opening) = (best[0], best[1], best[2]);
            var (bytes, kept) = Cost(folder);
            var text = string.Create(
                CultureInfo.InvariantCulture,
                $"""
                # What reading photographs costs

                Written by `dotnet run -c Release --project benchmarks/Handhold.Benchmarks -- photographs`.

                * {DateTimeOffset.UtcNow:yyyy-MM-dd}, commit {Repository.Commit()}
                * {Environment.ProcessorCount} cores; {RuntimeInformation.OSDescription}; {RuntimeInformation.FrameworkDescription}
                * load average {before} before, {Repository.Load()} after: above {Environment.ProcessorCount} others kept the cores busy
                * best of {Repeats} runs, the files in the memory of the system

                {Files} sparse files of {Size
                    / 1_000_000} MB in {Folders} folders, each with the header of `shared/golden/photographs/dial.jpg`.

                | | ms | files a second |
                |---|---:|---:|
                | one thread | {one:F0} | {Files / one * 1000:F0} |
                | two threads | {two:F0} | {Files / two * 1000:F0} |
                | only opening each file and reading its first 4 kB, one thread | {opening:F0} | {Files / opening * 1000:F0} |

                Two threads are {one
                    / two:F2} times faster than one. {bytes:F0} bytes are read of a file, and {kept:F0} bytes of memory kept for a frame.

                """
            );
            File.WriteAllText(Path.Combine(Repository.Root, "benchmarks", "PHOTOGRAPHS.md"), text);
            Console.Write(text);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Fill(DirectoryInfo folder)
    {
        var header = File.ReadAllBytes(Path.Combine(Repository.Root, "shared", "golden", "photographs", "dial.jpg"));
        for (var i = 0; i < Files; i++)
        {
            var day = folder.CreateSubdirectory(FormattableString.Invariant($"day {i % Folders:D2}"));
            using var file = File.Create(Path.Combine(day.FullName, FormattableString.Invariant($"IMG_{i / Folders:D4}.JPG")));
            file.Write(header);
            file.SetLength(Size);
        }
    }

    private static PhotoImport Read(DirectoryInfo folder, int threads) => Photographs.Read([folder.FullName], new() { Threads = threads });

    private static void Open(DirectoryInfo folder)
    {
        var first = new byte[4096];
        foreach (var path in Directory.EnumerateFiles(folder.FullName, "*", SearchOption.AllDirectories))
        {
            using var file = File.OpenHandle(path);
            RandomAccess.Read(file, first, 0);
        }
    }

    /// <summary>Milliseconds of each work's best run; the works take turns, so that a moment's rest of the machine serves all.</summary>
    private static double[] Best(params Action[] works)
    {
        var best = new double[works.Length];
        Array.Fill(best, double.PositiveInfinity);
        for (var run = 0; run <= Repeats; run++)
        for (var work = 0; work < works.Length; work++)
        {
            var clock = Stopwatch.StartNew();
            works[work]();
            if (run > 0)
                best[work] = Math.Min(best[work], clock.Elapsed.TotalMilliseconds);
        }

        return best;
    }

    /// <summary>Bytes read of a file, by the system's count where it keeps one, and bytes kept for a frame.</summary>
    private static (double Bytes, double Kept) Cost(DirectoryInfo folder)
    {
        var (memory, read) = (GC.GetTotalMemory(forceFullCollection: true), SystemRead());
        var import = Read(folder, 1);
        var bytes = SystemRead() - read;
        var kept = GC.GetTotalMemory(forceFullCollection: true) - memory;
        GC.KeepAlive(import);
        return (bytes / (double)Files, kept / (double)Files);
    }

    private static long SystemRead() =>
        File.Exists("/proc/self/io") ? long.Parse(File.ReadLines("/proc/self/io").First().Split(' ')[1], CultureInfo.InvariantCulture) : 0;
}
