using Handhold.Randomness;

namespace Handhold.Tests;

public class RandomStreamFacts
{
    // Counter words 0-3, key words 0-1, output words 0-3: the known answers that the generator's authors published with it.
    [Theory]
    [InlineData("00000000 00000000 00000000 00000000", "00000000 00000000", "6627e8d5 e169c58d bc57ac4c 9b00dbd8")]
    [InlineData("ffffffff ffffffff ffffffff ffffffff", "ffffffff ffffffff", "408f276d 41c83b0e a20bc7c6 6d5451fd")]
    [InlineData("243f6a88 85a308d3 13198a2e 03707344", "a4093822 299f31d0", "d16cfe09 94fdcceb 5001e420 24126ea1")]
    public void The_generator_gives_its_published_answers(string counter, string key, string answer)
    {
        var (c, k, a) = (Pairs(counter), Pairs(key), Pairs(answer));
        Assert.Equal((a[0], a[1]), Philox.Block(c[0], c[1], k[0]));

        static ulong[] Pairs(string text) =>
            [.. text.Split(' ').Select(word => Convert.ToUInt64(word, 16)).Chunk(2).Select(pair => pair[0] | (pair[1] << 32))];
    }

    [Fact]
    public void A_stream_starts_with_the_block_of_its_seed_and_index()
    {
        var stream = Seed.From(-3).Stream(7);
        var (first, second) = Philox.Block(0, 7, unchecked((ulong)-3));
        Assert.Equal([first, second, Philox.Block(1, 7, unchecked((ulong)-3)).Low], [stream.Bits(), stream.Bits(), stream.Bits()]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    public void Draws_do_not_depend_on_the_number_of_threads(int threads)
    {
        var seed = Seed.From(20250131);
        var draws = new double[1000];
        Parallel.For(0, draws.Length, new() { MaxDegreeOfParallelism = threads }, i => draws[i] = seed.Stream(i).Beta(1.2, 38.8));
        Assert.Equal(Enumerable.Range(0, draws.Length).Select(i => seed.Stream(i).Beta(1.2, 38.8)), draws);
    }

    [Fact]
    public void Streams_and_seeds_next_to_each_other_are_not_correlated()
    {
        const int N = 100_000;
        var (a, b, c) = (Seed.From(1).Stream(0), Seed.From(1).Stream(1), Seed.From(2).Stream(0));
        var (ab, ac) = (0.0, 0.0);
        for (var i = 0; i < N; i++)
        {
            var x = a.Normal();
            ab += x * b.Normal() / N;
            ac += x * c.Normal() / N;
        }
        Assert.InRange(Math.Abs(ab), 0, 4 / Math.Sqrt(N));
        Assert.InRange(Math.Abs(ac), 0, 4 / Math.Sqrt(N));
    }

    // Mean and variance within four standard errors; the fourth moments are those of each family.
    [Fact]
    public void Uniform_draws_have_their_moments() => Moments(s => s.Uniform(), 1 / 2.0, 1 / 12.0, kurtosis: 1.8);

    [Fact]
    public void Normal_draws_have_their_moments() => Moments(s => s.Normal(), 0, 1, kurtosis: 3);

    [Theory]
    [InlineData(0.3)]
    [InlineData(1.2)]
    [InlineData(38.8)]
    public void Gamma_draws_have_their_moments(double shape) => Moments(s => s.Gamma(shape), shape, shape, kurtosis: 3 + 6 / shape);

    [Fact]
    public void Beta_draws_have_their_moments()
    {
        const double A = 1.2;
        const double B = 38.8;
        const double S = A + B;
        const double Excess = 6 * ((A - B) * (A - B) * (S + 1) - A * B * (S + 2)) / (A * B * (S + 2) * (S + 3));
        Moments(s => s.Beta(A, B), A / S, A * B / (S * S * (S + 1)), 3 + Excess);
    }

    [Fact]
    public void Uniform_draws_stay_inside_their_ends()
    {
        Assert.True((0UL + 0.5) * (1.0 / (1UL << 52)) > 0);
        Assert.True(((ulong.MaxValue >> 12) + 0.5) * (1.0 / (1UL << 52)) < 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_gamma_without_a_shape_is_refused(double shape) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Seed.From(1).Stream(1).Gamma(shape));

    private static void Moments(Func<RandomStream, double> draw, double mean, double variance, double kurtosis)
    {
        const int N = 400_000;
        var stream = Seed.From(20250131).Stream(3);
        var (sum, squares) = (0.0, 0.0);
        for (var i = 0; i < N; i++)
        {
            var d = draw(stream) - mean;
            sum += d;
            squares += d * d;
        }
        Assert.InRange(sum / N, -4 * Math.Sqrt(variance / N), 4 * Math.Sqrt(variance / N));
        var error = 4 * variance * Math.Sqrt((kurtosis - 1) / N);
        Assert.InRange(squares / N, variance - error, variance + error);
    }
}
