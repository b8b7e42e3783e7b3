using System.Diagnostics;
using Handhold.Randomness;

namespace Handhold.Benchmarks;

/// <summary>Ten thousand curves in one fit, on one core and on two.</summary>
internal static class ManyCurves
{
    private const int Curves = 10_000;
    private const int Repeats = 7;

    /// <summary>Median milliseconds of a fit on as many processors as DOTNET_PROCESSOR_COUNT allows.</summary>
    internal static double Measure()
    {
        var seed = Seed.From(20250131);
        FrameTable table =
        [
            .. Enumerable
                .Range(0, Curves)
                .SelectMany(i =>
                    NineBySix
                        .Shoot(seed.Stream(i))
                        .Select(row => new FrameCell(row.Exposure, row.Frames, row.Keepers)
                        {
                            Conditions = new() { Setup = FormattableString.Invariant($"setup {i:D5}") },
                        })
                ),
        ];
        var model = KeeperModel.Default with { Estimator = Estimator.BiasReduced };
        List<double> times = [];
        for (var i = 0; i <= Repeats; i++)
        {
            var clock = Stopwatch.StartNew();
            model.Fit(table);
            if (i > 0)
                times.Add(clock.Elapsed.TotalMilliseconds);
        }
        return times.Order().ElementAt(Repeats / 2);
    }

    /// <summary>The same in a process of its own, on so many cores.</summary>
    internal static double MeasureOn(int cores)
    {
        ProcessStartInfo start = new(Environment.ProcessPath!, ["curves"]) { RedirectStandardOutput = true };
        start.Environment["DOTNET_PROCESSOR_COUNT"] = FormattableString.Invariant($"{cores:X}");
        using var child = Process.Start(start)!;
        var said = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        return double.Parse(said, System.Globalization.CultureInfo.InvariantCulture);
    }
}
