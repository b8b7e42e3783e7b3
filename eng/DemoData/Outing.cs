namespace DemoData;

/// <summary>What one photographer shot with one setup, and the truth behind it.</summary>
/// <param name="Photographer">Who.</param>
/// <param name="Setup">With what.</param>
/// <param name="HalfPoint">Half point of the uncapped curve on a usual day, as 1/x s.</param>
/// <param name="Steepness">Logits per stop at half.</param>
/// <param name="Ceiling">Rate of very fast frames.</param>
/// <param name="Slowest">Slowest speed, as 1/x s; the fastest is always 1/250 s.</param>
/// <param name="Visits">Which visits to the museum.</param>
/// <param name="Bursts">Bursts at each speed on each visit.</param>
/// <param name="BurstOf">Frames in each burst.</param>
internal sealed record Outing(
    string Photographer,
    Setup Setup,
    double HalfPoint,
    double Steepness,
    double Ceiling,
    int Slowest,
    int[] Visits,
    int Bursts,
    int BurstOf
)
{
    /// <summary>Fastest speed, as 1/x s.</summary>
    internal int Fastest { get; init; } = 250;

    internal static readonly Outing[] All =
    [
        new("Robin", Setup.Room, 70, 1.8, 0.98, Slowest: 4, [1], Bursts: 2, BurstOf: 2),
        new("Robin", Setup.Dial, 60, 1.7, 0.98, Slowest: 8, [1, 2], Bursts: 1, BurstOf: 3),
        new("Robin", Setup.SteadyDial, 13, 1.7, 0.98, Slowest: 1, [1, 2], Bursts: 1, BurstOf: 3) { Fastest = 60 },
        new("Robin", Setup.Movement, 40, 1.5, 0.98, Slowest: 4, [1, 2, 3], Bursts: 1, BurstOf: 2),
        new("Robin", Setup.Pendulum, 20, 2.0, 0.65, Slowest: 2, [3], Bursts: 2, BurstOf: 4),
        new("Kim", Setup.Room, 100, 1.5, 0.97, Slowest: 8, [1], Bursts: 2, BurstOf: 3),
        new("Kim", Setup.Dial, 110, 1.4, 0.97, Slowest: 15, [1], Bursts: 2, BurstOf: 3),
        new("Kim", Setup.SteadyDial, 20, 1.4, 0.97, Slowest: 2, [1, 2], Bursts: 1, BurstOf: 3) { Fastest = 125 },
        new("Kim", Setup.Movement, 70, 1.3, 0.97, Slowest: 8, [2, 3], Bursts: 1, BurstOf: 3),
    ];
}
