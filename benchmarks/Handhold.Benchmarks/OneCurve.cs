using BenchmarkDotNet.Attributes;
using Handhold.Randomness;
using Handhold.Simulation;
using Handhold.Solvers;
using static Handhold.ShutterSpeed;

namespace Handhold.Benchmarks;

/// <summary>One curve of nine speeds by six frames in two bursts of 3; everything as a ratio to one maximum-likelihood fit of the same table.</summary>
[MemoryDiagnoser]
public class OneCurve
{
    private readonly double[] _stops;
    private readonly int[] _frames;
    private readonly int[] _keepers;
    private readonly FrameTable _table;
    private readonly KeeperCurve _curve;

    public OneCurve()
    {
        World world = new()
        {
            HalfPoint = -5,
            Steepness = 1.6,
            Ceiling = 0.97,
            SessionLuck = 0.3,
            BurstLuck = 0.2,
        };
        ShootPlan plan = new() { Speeds = [.. new[] { 500, 250, 125, 60, 30, 15, 8, 4, 2 }.Select(d => OneOver(d))] };
        _table = world.Shoot(plan, Seed.From(20250131).Stream(0));
        var speeds = _table.GroupBy(row => row.Exposure).ToArray();
        _stops = [.. speeds.Select(s => s.Key.Log2Seconds)];
        _frames = [.. speeds.Select(s => s.Sum(row => row.Frames))];
        _keepers = [.. speeds.Select(s => s.Sum(row => row.Keepers))];
        _curve = KeeperModel.Default.Fit(_table).Only;
        if (!NewtonLogistic.Fit(_stops, _frames, _keepers).Converged)
        {
            throw new InvalidOperationException("The benchmark's table separates: choose another seed.");
        }
    }

    [Benchmark(Baseline = true, Description = "maximum likelihood")]
    public double MaximumLikelihood() => NewtonLogistic.Fit(_stops, _frames, _keepers).LogLikelihood;

    [Benchmark(Description = "posterior with ceiling and luck")]
    public KeeperCurve Posterior() => KeeperModel.Default.Fit(_table).Only;

    [Benchmark(Description = "frames needed, one burst")]
    public FramesNeededAnswer FramesNeeded() => _curve.FramesNeeded(OneOver(30), keepers: 1, assurance: 0.95);

    [Benchmark(Description = "frames needed, bursts of 3")]
    public FramesNeededAnswer FramesNeededInBursts() =>
        _curve.FramesNeeded(OneOver(30), keepers: 1, assurance: 0.95, new() { BurstsOf = 3 });

    [Benchmark(Description = "rate at a speed")]
    public RateAnswer Rate() => _curve.RateAt(OneOver(30));
}
