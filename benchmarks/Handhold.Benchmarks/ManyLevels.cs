using System.Diagnostics;
using System.Text.Json;
using Handhold.Models;
using Handhold.Solvers;

namespace Handhold.Benchmarks;

/// <summary>A thousand photographers with four setups each in one fit, ten thousand, and photographers crossed with lenses.</summary>
internal static class ManyLevels
{
    private const string Case = "grouped-thousand";
    private const int Speeds = 9;
    private const int Setups = 4;
    private const int Frames = 10;

    private static readonly string[] s_keepers = File.ReadAllLines(Golden("keepers.txt"));

    /// <summary>Photographers of the golden case, those of the first thousand again and again.</summary>
    internal static FrameTable Table(int photographers) =>
        [
            .. from p in Enumerable.Range(0, photographers)
            from i in Enumerable.Range(0, Setups * Speeds)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(i % Speeds - 4), Frames, Kept(p, i))
            {
                Conditions = new()
                {
                    Photographer = FormattableString.Invariant($"p{p:D5}"),
                    Setup = FormattableString.Invariant($"s{i / Speeds + 1}"),
                },
            },
        ];

    /// <summary>Intercepts of photographers and of setups within photographers.</summary>
    internal static KeeperModel Nested { get; } =
        KeeperModel.Default with
        {
            Estimator = Estimator.Likelihood,
            Each = [],
            Varies = [new("photographer"), new("setup") { Within = ["photographer"] }],
        };

    /// <summary>The same by the posterior, in stops.</summary>
    internal static KeeperModel InStops { get; } = Nested with { Estimator = Estimator.Posterior };

    internal static GroupedProblem Problem(FrameTable table)
    {
        FrameCell[] cells = [.. table];
        var layout = TermChoice.Layout(Nested, [.. cells], "The table");
        return GroupLayout.Of(Nested, layout, [.. cells], "The table").Problem([.. cells], Nested);
    }

    /// <summary>As many lenses as photographers, or four, of which each photographer uses four.</summary>
    internal static GroupedProblem Crossed(int photographers, int lenses)
    {
        var (rows, design) = (photographers * Setups * Speeds, new double[2 * photographers * Setups * Speeds]);
        var (who, lens, keepers) = (new int[rows], new int[rows], new int[rows]);
        for (var (p, row) = (0, 0); p < photographers; p++)
        for (var i = 0; i < Setups * Speeds; i++, row++)
        {
            (design[2 * row], design[2 * row + 1]) = (1, i % Speeds - 4);
            // The steps are unlike each other and prime to the number of lenses where it is a power of two, so that pairs of lenses keep changing.
            (who[row], lens[row], keepers[row]) = (p, (p * 5 + (i / Speeds) * (2 * p + 1)) % lenses, Kept(p, i));
        }
        return new(
            new(["intercept", "log2Exposure"], design, Enumerable.Repeat(Frames, rows).ToArray(), keepers),
            [new([.. who], photographers, [0]), new([.. lens], lenses, [0])]
        );
    }

    /// <summary>What others found and needed, from the certificate's run.</summary>
    internal static JsonElement Others()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Golden("expected.json")));
        return file.RootElement.Clone();
    }

    /// <summary>The least milliseconds of a work by the clock and of all threads, over some runs after one.</summary>
    internal static (double Clock, double Processor) Least(int runs, Action work)
    {
        var least = (Clock: double.PositiveInfinity, Processor: double.PositiveInfinity);
        for (var run = 0; run <= runs; run++)
        {
            var (took, used) = Once(work);
            if (run > 0)
                least = (Math.Min(least.Clock, took), Math.Min(least.Processor, used));
        }
        return least;
    }

    /// <summary>The milliseconds of one run, by the clock and of all threads.</summary>
    internal static (double Clock, double Processor) Once(Action work)
    {
        var before = Process.GetCurrentProcess().TotalProcessorTime;
        var clock = Stopwatch.StartNew();
        work();
        return (clock.Elapsed.TotalMilliseconds, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds);
    }

    /// <summary>Bytes that what a work makes keeps alive.</summary>
    internal static long Kept<T>(Func<T> make)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var made = make();
        var after = GC.GetTotalMemory(forceFullCollection: true);
        GC.KeepAlive(made);
        return after - before;
    }

    private static int Kept(int photographer, int cell) =>
        Convert.ToInt32(s_keepers[photographer % s_keepers.Length].Substring(cell, 1), 16);

    private static string Golden(string file) => Path.Combine(Repository.Root, "shared", "golden", Case, file);
}
