using System.Collections.Immutable;

namespace Handhold.Simulation;

/// <summary>Which frames to shoot: at each speed, on each day, some bursts of some frames.</summary>
public sealed partial record ShootPlan
{
    /// <summary>The shutter speeds, in the order of shooting.</summary>
    public required ImmutableArray<ShutterSpeed> Speeds { get; init; }

    /// <summary>Bursts at each speed on each day.</summary>
    public int Bursts { get; init; } = 2;

    /// <summary>Frames in each burst.</summary>
    public int BurstOf { get; init; } = 3;

    /// <summary>Whether rows name their burst. Where they do not, every frame is held afresh and has luck of its own.</summary>
    public bool NameBursts { get; init; } = true;

    /// <summary>The days, by label.</summary>
    public ImmutableArray<string> Sessions { get; init; } = ["1"];

    /// <summary>What all rows share; session, burst and place in the burst are filled in.</summary>
    public Conditions Conditions { get; init; } = Conditions.None;
}
