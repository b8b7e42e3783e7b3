using Handhold.Kernels;

namespace Handhold.Tests.Kernels;

public class GaussRuleFacts
{
    [Fact]
    public void Nodes_and_weights_agree_with_the_eigenvectors_of_the_jacobi_matrix()
    {
        SpecialValues.Agree("hermitenode", 1e-14, v => GaussRule.Hermite((int)v[0]).Nodes[(int)v[1]], floor: 1);
        SpecialValues.Agree("hermiteweight", 1e-12, v => GaussRule.Hermite((int)v[0]).Weights[(int)v[1]]);
        SpecialValues.Agree("legendrenode", 1e-15, v => GaussRule.Legendre((int)v[0]).Nodes[(int)v[1]], floor: 1);
        SpecialValues.Agree("legendreweight", 1e-12, v => GaussRule.Legendre((int)v[0]).Weights[(int)v[1]]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(50)]
    [InlineData(200)]
    public void Rules_give_the_moments_of_their_measures(int count)
    {
        var (hermite, legendre) = (GaussRule.Hermite(count), GaussRule.Legendre(count));
        Assert.Equal(1, hermite.Weights.Sum(), 1e-13);
        Assert.Equal(1, legendre.Weights.Sum(), 1e-13);
        Assert.Equal(count > 1 ? 1 : 0, Moment(hermite, 2), 1e-12);
        Assert.Equal(count > 1 ? 1 / 3.0 : 0, Moment(legendre, 2), 1e-12);
        Assert.Equal(0, Moment(hermite, 3), 1e-12);
    }

    private static double Moment(GaussRule rule, int power) => rule.Nodes.Zip(rule.Weights, (x, w) => w * Math.Pow(x, power)).Sum();
}
