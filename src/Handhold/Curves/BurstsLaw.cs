using System.Collections.Concurrent;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>Keepers over several bursts of one day, each with a fresh grip: exact convolution at every half point of the day.</summary>
internal sealed class BurstsLaw(RateLaw law, double exposure) : IBurstsLaw
{
    private readonly ConcurrentDictionary<int, DaysOfBursts[]> _days = []; // by the frames that they resolve

    /// <inheritdoc />
    public double[] Fewer(int below, int full, int burstsOf, int rest, CancellationToken cancellation = default)
    {
        var (sum, total) = (new double[below], 0.0);
        var (power, product) = (new double[below], new double[below]);
        // The chance of fewer than k turns over where k are expected: no sharper than with 4k frames. That of every count is as sharp as all frames together.
        var frames = full * burstsOf + rest;
        var resolved = below > frames ? frames : 4 * below;
        foreach (var days in _days.GetOrAdd(resolved, n => [.. law.Atoms.Select(atom => new DaysOfBursts(atom, exposure, n))]))
        {
            cancellation.ThrowIfCancellationRequested();
            var (one, last) = (days.Counts(burstsOf, below), rest > 0 ? days.Counts(rest, below) : []);
            for (var day = 0; day < days.Count; day++)
            {
                IndependentCounts.Repeat(one.AsSpan(day * below, below), full, power);
                if (rest > 0)
                {
                    IndependentCounts.Add(power, last.AsSpan(day * below, below), product);
                    product.CopyTo(power, 0);
                }

                var weight = days.Weight(day);
                total += weight;
                for (var j = 0; j < below; j++)
                    sum[j] += weight * power[j];
            }
        }

        for (var j = 0; j < below; j++)
            sum[j] /= total;
        return sum;
    }

    /// <summary>Correlation of two frames of a burst about the rate of their day: their covariance over their variance, each averaged over the days.</summary>
    internal double Correlation()
    {
        var (covariance, variance) = (0.0, 0.0);
        foreach (var atom in law.Atoms)
        {
            DaysOfBursts days = new(atom with { FirstShift = 0 }, exposure, 2);
            var pairs = days.Counts(2, 3);
            for (var day = 0; day < days.Count; day++)
            {
                var pair = pairs.AsSpan(3 * day, 3);
                var (keep, miss) = (pair[2] + pair[1] / 2, pair[0] + pair[1] / 2);
                covariance += days.Weight(day) * (pair[2] * pair[0] - pair[1] * pair[1] / 4);
                variance += days.Weight(day) * keep * miss;
            }
        }

        return variance == 0 ? 0 : covariance / variance;
    }
}
