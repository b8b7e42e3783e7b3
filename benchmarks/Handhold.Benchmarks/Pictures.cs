using BenchmarkDotNet.Attributes;
using Handhold.Plots;
using ScottPlot;
using static Handhold.ShutterSpeed;

namespace Handhold.Benchmarks;

/// <summary>A keeper curve of 1200 x 800 as a ratio to an empty plot of that size.</summary>
[MemoryDiagnoser]
public class Pictures
{
    private static readonly Plot s_curve = KeeperCurvePlot.Draw(Fit(KeeperModel.Default));
    private static readonly Plot s_empty = new();

    internal static KeeperCurve Fit(KeeperModel model)
    {
        FrameTable table =
        [
            new(OneOver(60), frames: 6, keepers: 6),
            new(OneOver(30), frames: 6, keepers: 5),
            new(OneOver(15), frames: 6, keepers: 3),
            new(OneOver(8), frames: 6, keepers: 0),
        ];
        return model.Fit(table).Only;
    }

    [Benchmark(Baseline = true, Description = "empty plot, 1200 x 800")]
    public byte[] Empty() => s_empty.GetImageBytes(1200, 800, ImageFormat.Png);

    [Benchmark(Description = "keeper curve, 1200 x 800")]
    public byte[] KeeperCurve() => s_curve.GetImageBytes(1200, 800, ImageFormat.Png);
}
