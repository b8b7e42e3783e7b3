using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>A density as weighted points: importance sampling from a multivariate t distribution at quasi-random points.</summary>
/// <remarks>
/// The first t has the location and curvature of the density's top; the second, from which the sample is taken, the mean and covariance that the first one's
/// weighted points show. Where so few of them carry weight that they show little, more t's in between lead there. Sources: Kloek and van Dijk (1978), Econometrica 46, 1-19; Owen (2013), Monte Carlo theory, methods and examples, chapters 9 and 17.
/// </remarks>
internal sealed class WeightedSample
{
    private const int Trial = 1024;
    private const int TrialDegrees = 4;
    private const double Plenty = 0.75; // trials end when together they are worth so much of one's points
    private const double PointsEach = 10; // points that carry the moments, for each coordinate
    private const double Wider = 1.1; // tails are what a trial shows least of
    private readonly double[] _points;

    private WeightedSample(double[] points, double[] weights, double logIntegral, double tail)
    {
        (_points, Weights, LogIntegral, Tail) = (points, [.. weights], logIntegral, tail);
        EffectiveSize = 1 / weights.Sum(w => w * w);
    }

    /// <summary>Weights that add up to one.</summary>
    internal ImmutableArray<double> Weights { get; }

    internal int Count => Weights.Length;

    /// <summary>Log of the density's integral.</summary>
    internal double LogIntegral { get; }

    /// <summary>Independent draws of equal weight that would be as good: one over the sum of squared weights; the even spread of the points is not counted.</summary>
    internal double EffectiveSize { get; }

    /// <summary>Pareto k of the weights: see <see cref="ParetoTail"/>.</summary>
    internal double Tail { get; }

    internal ReadOnlySpan<double> Point(int index) => _points.AsSpan(index * (_points.Length / Count), _points.Length / Count);

    /// <summary>Samples a density.</summary>
    /// <param name="density">Its logarithm; coordinates of about unit scale.</param>
    /// <param name="start">Somewhere in its bulk.</param>
    /// <param name="size">Points.</param>
    /// <param name="bits">Gives 64 uniform bits at a time, for the shifts of the points.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static WeightedSample Of(LogDensity density, double[] start, int size, Func<ulong> bits, CancellationToken cancellation) =>
        Of(density, density, Peak.Of(density, start), 1, size, bits, cancellation);

    /// <summary>Samples a density whose top is known.</summary>
    /// <param name="density">Its logarithm; coordinates of about unit scale.</param>
    /// <param name="rough">Nearly the same, for trials.</param>
    /// <param name="peak">Its top.</param>
    /// <param name="trials">Trials at most, until together they show enough: where there may be several the sample's t is a tenth wider than they say.</param>
    /// <param name="size">Points.</param>
    /// <param name="bits">Gives 64 uniform bits at a time, for the shifts of the points.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static WeightedSample Of(
        LogDensity density,
        LogDensity rough,
        Peak peak,
        int trials,
        int size,
        Func<ulong> bits,
        CancellationToken cancellation
    )
    {
        var dimension = peak.Top.Length;
        var enough = PointsEach * dimension;
        var (mean, factor) = (peak.Top, peak.Factor);
        List<WeightedSample> seen = [];
        for (var left = trials; left > 0 && seen.Sum(s => s.EffectiveSize) <= Plenty * Trial; left--)
        {
            var trial = Draw(rough, mean, factor, new(dimension, TrialDegrees, Trial, bits), cancellation);
            if (trial.EffectiveSize >= enough)
                seen.Add(trial);
            (mean, factor) = Moments(trial.EffectiveSize < enough ? [trial.Tempered(enough)] : seen) ?? (mean, factor);
        }

        if (trials > 1)
            factor = Array.ConvertAll(factor, f => Wider * f);
        return Draw(density, mean, factor, new(dimension, StudentPoints.Usual, size, bits), cancellation);
    }

    /// <summary>Samples a density from the first t only: few points for a density that is near its normal shape.</summary>
    internal static WeightedSample Near(LogDensity density, double[] start, StudentPoints points)
    {
        var peak = Peak.Of(density, start);
        return Draw(density, peak.Top, peak.Factor, points, default);
    }

    /// <summary>Mean, and lower triangle of the covariance, of samples of one density together, each as good as its effective size; null where the points all but coincide.</summary>
    private static (double[] Mean, double[] Factor)? Moments(List<WeightedSample> samples)
    {
        var n = samples[0]._points.Length / samples[0].Count;
        var total = samples.Sum(s => s.EffectiveSize);
        var (mean, covariance) = (new double[n], new double[n * n]);
        foreach (var sample in samples)
            for (var k = 0; k < sample.Count; k++)
            for (var i = 0; i < n; i++)
                mean[i] += sample.EffectiveSize / total * sample.Weights[k] * sample.Point(k)[i];
        foreach (var sample in samples)
            for (var k = 0; k < sample.Count; k++)
            for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                covariance[i * n + j] +=
                    sample.EffectiveSize / total * sample.Weights[k] * (sample.Point(k)[i] - mean[i]) * (sample.Point(k)[j] - mean[j]);
        return Cholesky.Factor(covariance, n, 0) ? (mean, covariance) : null;
    }

    /// <summary>The same points as a sample of a density between the one drawn from and the one wanted: a power of the weights at which enough points carry them.</summary>
    private WeightedSample Tempered(double enough)
    {
        double[] weights = [.. Weights];
        for (var (low, high) = (0.0, 1.0); high - low > 0.01 * high; )
        {
            var power = (low + high) / 2;
            weights = [.. Weights.Select(w => Math.Pow(w, power))];
            var total = weights.Sum();
            weights = Array.ConvertAll(weights, w => w / total);
            if (1 / weights.Sum(w => w * w) < enough)
                high = power;
            else
                low = power;
        }

        return new(_points, weights, LogIntegral, Tail);
    }

    private static WeightedSample Draw(
        LogDensity density,
        double[] centre,
        double[] factor,
        StudentPoints standard,
        CancellationToken cancellation
    )
    {
        var (n, size) = (centre.Length, standard.Count);
        var (points, logs) = (new double[size * n], new double[size]);
        var logScale = 0.0;
        for (var i = 0; i < n; i++)
            logScale += Math.Log(factor[i * n + i]);
        Parallel.For(
            0,
            size,
            new ParallelOptions { CancellationToken = cancellation },
            index =>
            {
                var deviates = standard[index];
                var point = points.AsSpan(index * n, n);
                for (var i = 0; i < n; i++)
                {
                    point[i] = centre[i];
                    for (var j = 0; j <= i; j++)
                        point[i] += factor[i * n + j] * deviates[j];
                }

                logs[index] = density(point) - standard.LogDensity(index) + logScale;
            }
        );
        var top = logs.Max();
        var weights = Array.ConvertAll(logs, log => Math.Exp(log - top));
        var total = weights.Sum();
        return new(points, Array.ConvertAll(weights, w => w / total), top + Math.Log(total / size), ParetoTail.Shape(weights));
    }
}
