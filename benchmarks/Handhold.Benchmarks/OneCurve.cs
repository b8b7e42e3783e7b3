using BenchmarkDotNet.Attributes;
using Handhold.Fitting;
using Handhold.Solvers;
using static Handhold.ShutterSpeed;

namespace Handhold.Benchmarks;

/// <summary>The default fit and its answers, beside one maximum-likelihood Newton fit of the same table.</summary>
[MemoryDiagnoser]
public class OneCurve
{
    private readonly KeeperCurve _curve = KeeperModel.Default.Fit(NineBySix.Table).Only;
    private readonly double[] _frames = [.. NineBySix.Frames];
    private readonly double[] _keepers = [.. NineBySix.Keepers];

    [Benchmark(Baseline = true, Description = "maximum likelihood, Newton")]
    public double MaximumLikelihood() => new LogisticLine(NineBySix.Design, NineBySix.Frames, NineBySix.Keepers).Likelihood().Deviance;

    [Benchmark(Description = "likelihood kernel, the table at one point")]
    public double Kernel() => FramesLikelihood.LogLikelihood(new(1.6, 0.97, 0), -5, NineBySix.Stops, _frames, _keepers);

    [Benchmark(Description = "posterior with ceiling and luck")]
    public KeeperCurve Posterior() => KeeperModel.Default.Fit(NineBySix.Table).Only;

    [Benchmark(Description = "frames needed, one burst")]
    public FramesNeededAnswer FramesNeeded() => _curve.FramesNeeded(OneOver(30), keepers: 1, assurance: 0.95);

    [Benchmark(Description = "frames needed, bursts of 3")]
    public FramesNeededAnswer FramesNeededInBursts() =>
        _curve.FramesNeeded(OneOver(30), keepers: 1, assurance: 0.95, new() { BurstsOf = 3 });

    [Benchmark(Description = "rate at a speed")]
    public RateAnswer Rate() => _curve.RateAt(OneOver(30));
}
