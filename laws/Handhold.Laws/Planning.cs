using System.Collections.Immutable;

namespace Handhold.Laws;

/// <summary>What the library plans after a test.</summary>
internal static class Planning
{
    internal static readonly ImmutableArray<double> Assurances = [0.80, 0.90, 0.95, 0.99];
    internal static readonly ImmutableArray<int> Keepers = [1, 2, 3];
    internal static readonly ImmutableArray<int?> Layouts = [null, 3];

    internal static readonly ImmutableArray<(string Name, Func<KeeperCurve, ShutterSpeed?> Speed)> Rules =
    [
        ("rate 0.2 at 90 %", curve => curve.Slowest(rate: 0.2, assurance: 0.9).Shutter),
        ("rate 0.5 at 80 %", curve => curve.Slowest(rate: 0.5, assurance: 0.8).Shutter),
        ("rate 0.8 at 90 %", curve => curve.Slowest(rate: 0.8, assurance: 0.9).Shutter),
        (
            "nearest to half-keeper",
            curve => curve.HalfKeeperExposure().Exposure is { } half ? MarkedSpeeds.Nearest(half, Marks.Third) : null
        ),
    ];

    /// <summary>Plans for another day at speeds that the library chooses from the data.</summary>
    internal static IReadOnlyList<Plan> AfterTest(FrameTable table)
    {
        var curve = KeeperModel.Default.Fit(table).Only;
        if (curve.HalfPointPrior != TestDesign.HalfPoint)
        {
            throw new InvalidOperationException($"The worlds' half point is {TestDesign.HalfPoint}, the fit's {curve.HalfPointPrior}.");
        }
        var mode = PlugIn.Mode(table, KeeperModel.Default.Priors, TestDesign.HalfPoint);
        List<Plan> plans = [];
        foreach (var (rule, speed) in Rules)
        {
            var at = speed(curve);
            foreach (var layout in Layouts)
            {
                foreach (var keepers in Keepers)
                {
                    plans.AddRange(
                        Assurances.Select(assurance => Ask(curve, mode, new(rule, at, keepers, assurance, layout, null, 0, null)))
                    );
                }
            }
        }
        return plans;
    }

    private static Plan Ask(KeeperCurve curve, CurveShape mode, Plan wanted)
    {
        if (wanted.At is not { } at)
        {
            return wanted;
        }
        var answer = curve.FramesNeeded(at, wanted.Keepers, wanted.Assurance, new() { BurstsOf = wanted.BurstsOf });
        return wanted with
        {
            Frames = answer.Frames,
            Stated = answer.Assurance,
            PlugIn = PlugIn.FramesNeeded(mode.RateAt(at.Log2Seconds), wanted.Keepers, wanted.Assurance),
        };
    }
}
