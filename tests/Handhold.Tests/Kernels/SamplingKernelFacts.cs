using Handhold.Kernels;
using Handhold.Randomness;

namespace Handhold.Tests.Kernels;

public class SamplingKernelFacts
{
    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    [InlineData(21)]
    public void Every_coordinate_of_the_first_2_to_the_k_points_visits_each_of_as_many_parts_once(int dimensions)
    {
        const int Count = 1024;
        var stream = Seed.From(7).Stream(0);
        Sobol cube = new([.. Enumerable.Range(0, dimensions).Select(_ => stream.Bits())]);
        var point = new double[dimensions];
        var seen = new bool[dimensions, Count];
        for (var i = 0; i < Count; i++)
        {
            cube.Write(i, point);
            for (var j = 0; j < dimensions; j++)
            {
                Assert.InRange(point[j], double.Epsilon, 1 - 1e-16);
                var part = (int)(point[j] * Count);
                Assert.False(seen[j, part]);
                seen[j, part] = true;
            }
        }
    }

    /// <summary>Elementary intervals of two coordinates: the first two dimensions are a (0, k, 2)-net (Sobol 1967).</summary>
    [Fact]
    public void The_first_two_coordinates_visit_every_rectangle_of_equal_area_once()
    {
        Sobol cube = new([0x9e3779b97f4a7c15, 0x85ebca6b00000000]);
        for (var wide = 0; wide <= 8; wide++)
        {
            HashSet<(int, int)> seen = [];
            var point = new double[2];
            for (var i = 0; i < 256; i++)
            {
                cube.Write(i, point);
                Assert.True(seen.Add(((int)(point[0] * (1 << wide)), (int)(point[1] * (1 << (8 - wide))))));
            }
        }
    }

    /// <summary>A smooth integral over 24 dimensions, three of them beyond the tabulated polynomials: ∏ (1 + (x - 1/2) / 4) has mean 1.</summary>
    [Fact]
    public void Sums_over_the_points_beat_those_over_random_ones()
    {
        const int Dimensions = 24;
        const int Count = 4096;
        var (evenly, randomly) = (0.0, 0.0);
        for (var replicate = 0; replicate < 10; replicate++)
        {
            var stream = Seed.From(11).Stream(replicate);
            Sobol cube = new([.. Enumerable.Range(0, Dimensions).Select(_ => stream.Bits())]);
            var (sum, other, point) = (0.0, 0.0, new double[Dimensions]);
            for (var i = 0; i < Count; i++)
            {
                cube.Write(i, point);
                sum += Product(point);
                for (var j = 0; j < Dimensions; j++)
                    point[j] = stream.Uniform();
                other += Product(point);
            }

            evenly += Math.Pow(sum / Count - 1, 2);
            randomly += Math.Pow(other / Count - 1, 2);
        }

        Assert.True(evenly < randomly / 10, FormattableString.Invariant($"{evenly} against {randomly}"));

        static double Product(double[] x) => x.Aggregate(1.0, (product, value) => product * (1 + (value - 0.5) / 4));
    }

    /// <summary>Exact quantiles of a generalised Pareto distribution of shape k: (u^-k - 1) / k, and of the exponential for k = 0.</summary>
    [Theory]
    [InlineData(-0.3)]
    [InlineData(0)]
    [InlineData(0.4)]
    [InlineData(0.9)]
    public void The_tail_of_pareto_weights_has_their_shape(double k)
    {
        const int Count = 20_000;
        double[] weights =
        [
            .. Enumerable.Range(0, Count).Select(i => (i + 0.5) / Count).Select(u => k == 0 ? -Math.Log(u) : (Math.Pow(u, -k) - 1) / k),
        ];
        Assert.Equal(k, ParetoTail.Shape(weights), 0.05);
    }

    [Fact]
    public void Equal_weights_have_no_tail() => Assert.Equal(double.NegativeInfinity, ParetoTail.Shape([.. Enumerable.Repeat(1.0, 1000)]));

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    public void A_chi_square_quantile_leaves_its_share_below(int degrees)
    {
        foreach (var p in new[] { 1e-12, 1e-3, 0.2, 0.5, 0.9, 0.999999 })
            Assert.Equal(1 - p, ChiSquare.Above(ChiSquare.Quantile(p, degrees), degrees), 1e-13);
    }

    /// <summary>Source: Abramowitz and Stegun (1964), table 26.8, upper 5 % and 1 % points.</summary>
    [Theory]
    [InlineData(2, 0.95, 5.99147)]
    [InlineData(4, 0.95, 9.48773)]
    [InlineData(8, 0.99, 20.0902)]
    public void Chi_square_quantiles_are_those_of_the_table(int degrees, double p, double quantile) =>
        Assert.Equal(quantile, ChiSquare.Quantile(p, degrees), 1e-4);
}
