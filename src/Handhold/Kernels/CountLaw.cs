namespace Handhold.Kernels;

/// <summary>The law of a sum of counts that share nothing: exact up to <see cref="Most"/> frames, normal with its mean and variance beyond.</summary>
internal sealed class CountLaw
{
    private const int Most = 500;
    private readonly double[]? _masses;
    private readonly double _variance;

    private CountLaw(double[]? masses, double mean, double variance) => (_masses, Mean, _variance) = (masses, mean, variance);

    internal static CountLaw Nothing => new([1], 0, 0);

    internal double Mean { get; }

    /// <summary>Keepers among so many frames of one rate.</summary>
    internal static CountLaw Binomial(int frames, double rate, double miss) =>
        new(frames > Most ? null : Kernels.Binomial.Masses(frames, rate, miss), frames * rate, frames * rate * miss);

    /// <summary>Keepers among so many frames of one burst of a constant correlation above zero.</summary>
    internal static CountLaw BetaBinomial(int frames, double rate, double miss, double correlation)
    {
        var (a, b) = Kernels.BetaBinomial.Shapes(rate, miss, correlation);
        return new(
            frames > Most
                ? null
                : [.. Enumerable.Range(0, frames + 1).Select(k => Math.Exp(Kernels.BetaBinomial.LogMass(k, frames, a, b)))],
            frames * rate,
            frames * rate * miss * (1 + (frames - 1) * correlation)
        );
    }

    /// <summary>One of several laws, as their weights say; the weights add up to one.</summary>
    internal static CountLaw Mixed(ReadOnlySpan<double> weights, ReadOnlySpan<CountLaw> laws)
    {
        var (masses, mean, square) = (laws[0]._masses is { } first ? new double[first.Length] : null, 0.0, 0.0);
        for (var i = 0; i < laws.Length; i++)
        {
            mean += weights[i] * laws[i].Mean;
            square += weights[i] * (laws[i]._variance + laws[i].Mean * laws[i].Mean);
            for (var k = 0; k < masses?.Length; k++)
                masses[k] += weights[i] * laws[i]._masses![k];
        }

        return new(masses, mean, square - mean * mean);
    }

    internal CountLaw Plus(CountLaw other)
    {
        if (_masses is [_])
            return other;
        double[]? sum = null;
        if (_masses is not null && other._masses is not null && _masses.Length + other._masses.Length <= Most + 2)
        {
            sum = new double[_masses.Length + other._masses.Length - 1];
            IndependentCounts.Add(_masses, other._masses, sum);
        }

        return new(sum, Mean + other.Mean, _variance + other._variance);
    }

    /// <summary>This count and so many others that are alike.</summary>
    internal CountLaw Plus(CountLaw other, int times)
    {
        var sum = this;
        for (var (e, power) = (times, other); e > 0; e >>= 1, power = power.Plus(power))
            if ((e & 1) == 1)
                sum = sum.Plus(power);
        return sum;
    }

    /// <summary>P(fewer than k), P(k), P(more than k).</summary>
    internal (double Fewer, double Exactly, double More) Around(int k)
    {
        if (_masses is not null)
            return (Sum(_masses.AsSpan(0, k)), _masses[k], Sum(_masses.AsSpan(k + 1)));
        var sd = Math.Sqrt(_variance);
        var (fewer, more) = (Normal.Cdf((k - 0.5 - Mean) / sd), Normal.Cdf((Mean - k - 0.5) / sd));
        return (fewer, Math.Max(0, 1 - fewer - more), more);
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        return sum;
    }
}
