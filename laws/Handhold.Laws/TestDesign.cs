using System.Collections.Immutable;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>How each world's curve is tested: seven speeds one stop apart by six frames on one day.</summary>
internal sealed record TestDesign(string Name, ShootPlan Shoot)
{
    /// <summary>The model of the worlds: they know no first frame of a burst, so its place in the burst is no term.</summary>
    internal static readonly KeeperModel Model = KeeperModel.Default with { PoolConditions = true };

    /// <summary>The setup of every world: its prior half point is near 1/40 s, give or take two stops.</summary>
    internal static readonly Conditions Setup = new()
    {
        EquivalentFocalLength = 50,
        StabiliserStops = 0,
        StabiliserMode = "off",
        Magnification = 0,
        SubjectMotion = "still",
        Criterion = Criterion.Print,
    };

    /// <summary>The default prior of the half point at that setup, log2 seconds.</summary>
    internal static readonly NormalPrior HalfPoint = new(Math.Log2(1.0 / 50) + 0.3, 2);

    internal static readonly ImmutableArray<ShutterSpeed> Speeds =
    [
        .. new[] { 320, 160, 80, 40, 20, 10, 5 }.Select(d => ShutterSpeed.OneOver(d)),
    ];

    internal static readonly TestDesign TwoBurstsOfThree = new("two bursts of 3", Plan(bursts: 2, burstOf: 3));
    internal static readonly TestDesign OneBurstOfSix = new("one burst of 6", Plan(bursts: 1, burstOf: 6));
    internal static readonly TestDesign SixFramesHeldAfresh = new(
        "6 frames, bursts not recorded, each held afresh",
        Plan(bursts: 6, burstOf: 1) with
        {
            NameBursts = false,
        }
    );

    internal static readonly ImmutableArray<TestDesign> All = [TwoBurstsOfThree, OneBurstOfSix, SixFramesHeldAfresh];

    internal static ShootPlan Plan(int bursts, int burstOf) =>
        new()
        {
            Speeds = Speeds,
            Bursts = bursts,
            BurstOf = burstOf,
            Conditions = Setup,
        };
}
