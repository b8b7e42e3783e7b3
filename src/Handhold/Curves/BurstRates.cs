using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The distribution of the keeper probability that the frames of one burst share.</summary>
internal sealed class BurstRates(double[] rates, double[] misses, double[] masses)
{
    /// <summary>P(at least <paramref name="keepers"/> of <paramref name="frames"/> frames of one burst).</summary>
    internal double AtLeast(int keepers, int frames)
    {
        if (keepers <= 0)
            return 1;
        if (keepers > frames)
            return 0;
        var (sum, total) = (0.0, 0.0);
        for (var i = 0; i < rates.Length; i++)
        {
            total += masses[i];
            if (masses[i] > 0)
                sum += masses[i] * Binomial.Tails(keepers, frames, rates[i], misses[i]).AtLeast;
        }

        return sum / total;
    }

    /// <summary>P(exactly <paramref name="keepers"/> of <paramref name="frames"/>).</summary>
    internal double Exactly(int keepers, int frames)
    {
        var (sum, total) = (0.0, 0.0);
        for (var i = 0; i < rates.Length; i++)
        {
            total += masses[i];
            if (masses[i] > 0)
                sum += masses[i] * Math.Exp(Binomial.LogMass(keepers, frames, rates[i], misses[i]));
        }

        return sum / total;
    }
}
