using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The distribution of the keeper probability that the frames of one burst share.</summary>
/// <param name="rates">Keeper probabilities.</param>
/// <param name="misses">One less each.</param>
/// <param name="masses">How probable each is, in any unit.</param>
/// <param name="firsts">The first frame's keeper probability beside each; null when it is no other.</param>
internal sealed class BurstRates(double[] rates, double[] misses, double[] masses, double[]? firsts = null) : IBurstLaw
{
    private const double Reach = 8;

    /// <summary>The rates that normal luck makes of a predictor, so close together that the count of a thousand frames is resolved.</summary>
    internal static BurstRates OfNormalLuck(Link link, double predictor, double sd, double ceiling, double floor)
    {
        var step = Math.Min(0.25, 0.05 / sd);
        var nodes = (int)Math.Ceiling(Reach / step);
        double[] luck = [.. Enumerable.Range(-nodes, 2 * nodes + 1).Select(i => i * step)];
        (double Keep, double Miss)[] at = [.. luck.Select(u => Links.Capped(link, predictor + sd * u, ceiling, floor))];
        return new([.. at.Select(p => p.Keep)], [.. at.Select(p => p.Miss)], [.. luck.Select(Normal.Density)]);
    }

    /// <inheritdoc />
    public double AtLeast(int keepers, int frames) => Mean(keepers, frames, AtLeast);

    /// <inheritdoc />
    public double Exactly(int keepers, int frames) => Mean(keepers, frames, Exactly);

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
