using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The distribution of the keeper probability that the frames of one burst share.</summary>
/// <param name="rates">Keeper probabilities.</param>
/// <param name="misses">One less each.</param>
/// <param name="masses">How probable each is, in any unit.</param>
/// <param name="firsts">The first frame's keeper probability beside each; null when it is no other.</param>
internal sealed class BurstRates(double[] rates, double[] misses, double[] masses, double[]? firsts = null)
{
    /// <summary>P(at least <paramref name="keepers"/> of <paramref name="frames"/> frames of one burst).</summary>
    internal double AtLeast(int keepers, int frames) => Mean(keepers, frames, AtLeast);

    /// <summary>P(exactly <paramref name="keepers"/> of <paramref name="frames"/>).</summary>
    internal double Exactly(int keepers, int frames) => Mean(keepers, frames, Exactly);

    private double Mean(int keepers, int frames, Func<int, int, double, double, double> chance)
    {
        var (sum, total) = (0.0, 0.0);
        for (var i = 0; i < rates.Length; i++)
        {
            total += masses[i];
            if (masses[i] == 0)
                continue;
            var (rate, miss) = (rates[i], misses[i]);
            sum +=
                masses[i]
                * (
                    firsts is null
                        ? chance(keepers, frames, rate, miss)
                        : firsts[i] * chance(keepers - 1, frames - 1, rate, miss)
                            + (1 - firsts[i]) * chance(keepers, frames - 1, rate, miss)
                );
        }

        return sum / total;
    }

    private static double AtLeast(int keepers, int frames, double rate, double miss) =>
        keepers <= 0 ? 1
        : keepers > frames ? 0
        : Binomial.Tails(keepers, frames, rate, miss).AtLeast;

    private static double Exactly(int keepers, int frames, double rate, double miss) =>
        keepers < 0 || keepers > frames ? 0
        : frames == 0 ? 1
        : Math.Exp(Binomial.LogMass(keepers, frames, rate, miss));
}
