using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>Keepers over several bursts of one day, each with a fresh grip: exact convolution at every half point of the day.</summary>
internal sealed class BurstsLaw : IBurstsLaw
{
    private const int BurstNodes = 11;
    private const double Negligible = 1e-9;
    private readonly List<(CurveAtom Atom, double Distance, double Weight)> _days = [];

    private static GaussRule Burst { get; } = GaussRule.Hermite(BurstNodes);

    internal BurstsLaw(RateLaw law, double exposure, int burstsOf)
    {
        foreach (var atom in law.Atoms)
        {
            // A burst's count law must be resolved by the grid of days.
            var (start, step, masses) = atom.HalfPoint.Nodes(2.4 / (atom.Steepness * Math.Sqrt(burstsOf)));
            for (var i = 0; i < masses.Length; i++)
            {
                var weight = atom.Weight * masses.Span[i];
                if (weight > Negligible)
                    _days.Add((atom, start + i * step - exposure, weight));
            }
        }
    }

    /// <inheritdoc />
    public double[] Fewer(int below, int full, int burstsOf, int rest, CancellationToken cancellation = default)
    {
        var (sum, total) = (new double[below], 0.0);
        var (one, last, power, product) = (new double[below], new double[below], new double[below], new double[below]);
        var seen = 0;
        foreach (var (atom, distance, weight) in _days)
        {
            if ((++seen & 1023) == 0)
                cancellation.ThrowIfCancellationRequested();
            InBurst(atom, distance, burstsOf, one);
            IndependentCounts.Repeat(one, full, power);
            if (rest > 0)
            {
                InBurst(atom, distance, rest, last);
                IndependentCounts.Add(power, last, product);
                product.CopyTo(power, 0);
            }

            total += weight;
            for (var j = 0; j < below; j++)
                sum[j] += weight * power[j];
        }

        for (var j = 0; j < below; j++)
            sum[j] /= total;
        return sum;
    }

    /// <summary>Correlation of two frames of a burst about the rate of their day: their covariance over their variance, each averaged over the days.</summary>
    internal double Correlation()
    {
        var (covariance, variance, pair) = (0.0, 0.0, new double[3]);
        foreach (var (atom, distance, weight) in _days)
        {
            InBurst(atom with { FirstShift = 0 }, distance, 2, pair);
            var (keep, miss) = (pair[2] + pair[1] / 2, pair[0] + pair[1] / 2);
            covariance += weight * (pair[2] * pair[0] - pair[1] * pair[1] / 4);
            variance += weight * keep * miss;
        }

        return variance == 0 ? 0 : covariance / variance;
    }

    private static void InBurst(CurveAtom atom, double distance, int frames, double[] counts)
    {
        Array.Clear(counts);
        var single = atom.BurstSd == 0;
        for (var i = 0; i < (single ? 1 : BurstNodes); i++)
        {
            var luck = single ? 0 : atom.BurstSd * Burst.Nodes[i];
            var (keep, miss) = Chances(atom, distance + luck);
            var share = single ? 1 : Burst.Weights[i];
            if (atom.FirstShift == 0)
            {
                Add(counts, 0, share, frames, keep, miss);
                continue;
            }

            var (first, rest) = Chances(atom, distance + luck + atom.FirstShift);
            Add(counts, 0, share * rest, frames - 1, keep, miss);
            Add(counts, 1, share * first, frames - 1, keep, miss);
        }
    }

    private static (double Keep, double Miss) Chances(CurveAtom atom, double distance) =>
        Elementary.Capped(atom.Steepness * distance, atom.Ceiling, atom.Floor);

    /// <summary>Adds the masses of a binomial count that starts from <paramref name="from"/>.</summary>
    private static void Add(double[] counts, int from, double share, int frames, double keep, double miss)
    {
        if (miss < 1e-300 / share)
        {
            if (from + frames < counts.Length)
                counts[from + frames] += share;
            return;
        }

        var mass = share * Elementary.Power(miss, frames);
        for (var j = 0; from + j < counts.Length && j <= frames; j++)
        {
            counts[from + j] += mass;
            mass *= keep * (frames - j) / (miss * (j + 1));
        }
    }
}
