using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Tests.Solvers;

public class WeightedSampleFacts
{
    /// <summary>Two correlated normals and a gamma of shape 3 on a log scale: integral, means and variances in closed form.</summary>
    [Fact]
    public void Moments_and_integral_of_a_known_density_come_back()
    {
        // x ~ normal(1, 1); y | x ~ normal(x / 2, 0.5); s = log of a gamma of shape 3.
        var sample = WeightedSample.Of(
            z => -0.5 * (z[0] - 1) * (z[0] - 1) - 2 * (z[1] - z[0] / 2) * (z[1] - z[0] / 2) + 3 * z[2] - Math.Exp(z[2]),
            [0, 0, 0],
            16384,
            Seed.From(1).Stream(0).Bits,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(Math.Log(2 * Math.PI * 0.5 * 2), sample.LogIntegral, 2e-3);
        Assert.Equal(1, Mean(z => z[0]), 5e-3);
        Assert.Equal(0.5, Mean(z => z[1]), 5e-3);
        Assert.Equal(0.5, Mean(z => (z[0] - 1) * (z[1] - 0.5)), 1e-2);
        Assert.Equal(3, Mean(z => Math.Exp(z[2])), 1e-2);
        Assert.Equal(3, Mean(z => Math.Pow(Math.Exp(z[2]) - 3, 2)), 6e-2);
        Assert.InRange(sample.EffectiveSize, 5000, sample.Count);
        Assert.True(sample.Tail <= 0.7, FormattableString.Invariant($"k = {sample.Tail}"));

        double Mean(Func<double[], double> of) => Enumerable.Range(0, sample.Count).Sum(k => sample.Weights[k] * of([.. sample.Point(k)]));
    }

    /// <summary>Coordinates that lean so far to the left that of a t about the top few points carry weight: log |z|, z normal, integral √(π / 2), mean -(γ + log 2) / 2 (Euler's γ), beside normals.</summary>
    [Theory]
    [InlineData(8, 0)]
    [InlineData(4, 10)]
    public void A_density_far_from_its_tangent_normal_is_found_in_steps(int leaning, int normals)
    {
        const double mean = -(0.5772156649015329 + 0.6931471805599453) / 2;
        LogDensity density = z => z.ToArray().Select((x, i) => i < leaning ? x - Math.Exp(2 * x) / 2 : -x * x / 2).Sum();
        var sample = WeightedSample.Of(
            density,
            density,
            Peak.Of(density, new double[leaning + normals]),
            trials: 6,
            4096,
            Seed.From(1).Stream(0).Bits,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(leaning / 2.0 * Math.Log(Math.PI / 2) + normals / 2.0 * Math.Log(2 * Math.PI), sample.LogIntegral, 0.1);
        for (var i = 0; i < leaning + normals; i++)
            Assert.Equal(i < leaning ? mean : 0, Enumerable.Range(0, sample.Count).Sum(k => sample.Weights[k] * sample.Point(k)[i]), 0.1);
        Assert.InRange(sample.EffectiveSize, 400, sample.Count);
        Assert.True(sample.Tail <= 0.7, FormattableString.Invariant($"k = {sample.Tail}"));
    }

    [Fact]
    public void A_density_far_from_its_tangent_normal_is_owned_up_to()
    {
        // A funnel: x ~ normal(0, 3), y | x ~ normal(0, exp(x)).
        var sample = WeightedSample.Of(
            z => -z[0] * z[0] / 18 - 0.5 * z[1] * z[1] * Math.Exp(-2 * z[0]) - z[0],
            [0, 0],
            16384,
            Seed.From(1).Stream(0).Bits,
            TestContext.Current.CancellationToken
        );
        Assert.True(sample.Tail > 0.7, FormattableString.Invariant($"k = {sample.Tail}"));
    }

    [Fact]
    public void The_same_seed_gives_the_same_points_and_weights()
    {
        LogDensity density = z => -0.5 * z[0] * z[0];
        var (one, other) = (Draw(5), Draw(5));
        Assert.Equal(one.Weights, other.Weights);
        Assert.Equal(one.Point(17).ToArray(), other.Point(17).ToArray());
        Assert.NotEqual(one.Point(17).ToArray(), Draw(6).Point(17).ToArray());

        WeightedSample Draw(long seed) =>
            WeightedSample.Of(density, [0], 256, Seed.From(seed).Stream(0).Bits, TestContext.Current.CancellationToken);
    }
}
