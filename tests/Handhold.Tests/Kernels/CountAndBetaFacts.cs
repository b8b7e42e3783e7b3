using Handhold.Kernels;

namespace Handhold.Tests.Kernels;

public class CountAndBetaFacts
{
    [Fact]
    public void Log_gamma_beta_and_binomial_agree_with_high_precision()
    {
        SpecialValues.Agree("loggamma", 1e-15, v => GammaFunctions.LogGamma(v[0]), floor: 1);
        SpecialValues.Agree("logbeta", 1e-15, v => GammaFunctions.LogBeta(v[0], v[1]), floor: 1);
        SpecialValues.Agree("logbinomial", 1e-15, v => GammaFunctions.LogBinomial(v[0], v[1]), floor: 1);
    }

    [Fact]
    public void Both_tails_of_the_beta_distribution_agree_with_high_precision()
    {
        SpecialValues.Agree("betalower", 1e-12, v => Beta.Tails(v[2], 1 - v[2], v[0], v[1]).Lower, floor: 1e-280);
        SpecialValues.Agree("betaupper", 1e-12, v => Beta.Tails(v[2], 1 - v[2], v[0], v[1]).Upper, floor: 1e-280);
        Assert.Equal((0, 1), Beta.Tails(0, 1, 0.05, 3));
        Assert.Equal((1, 0), Beta.Tails(1, 0, 0.05, 3));
    }

    [Theory]
    [InlineData(0.05, 0.05)]
    [InlineData(0.05, 3)]
    [InlineData(0.05, 1e6)]
    [InlineData(0.5, 200.5)]
    [InlineData(1, 1)]
    [InlineData(1.2, 38.8)]
    [InlineData(12, 3)]
    [InlineData(1e6, 0.05)]
    [InlineData(1e6, 30)]
    [InlineData(1e6, 1e6)]
    public void Beta_distribution_at_its_quantile_gives_the_chance_back(double a, double b)
    {
        foreach (var p in new[] { 1e-12, 1e-9, 1e-6, 1e-3, 0.025, 0.3, 0.5, 0.7, 0.975, 1 - 1e-3, 1 - 1e-6, 1 - 1e-9, 1 - 1e-12 })
        {
            var (x, oneMinusX) = Beta.Quantile(p, a, b);
            var (lower, upper) = Beta.Tails(x, oneMinusX, a, b);
            Assert.Equal(1, lower / p, 1e-12);
            Assert.Equal(1, upper / (1 - p), 1e-12);
        }
    }

    [Fact]
    public void Beta_quantile_meets_its_closed_forms_and_ends()
    {
        Assert.Equal(1, Beta.Quantile(1e-6, 5, 1).X / Math.Pow(1e-6, 0.2), 1e-14);
        Assert.Equal(1, Beta.Quantile(0.5, 1, 0.05).OneMinusX / Math.Pow(0.5, 20), 1e-13);
        Assert.Equal((0, 1), Beta.Quantile(0, 2, 3));
        Assert.Equal((1, 0), Beta.Quantile(1, 2, 3));
        Assert.Equal((0, 1), Beta.Quantile(1e-300, 0.05, 0.05));
    }

    [Fact]
    public void Binomial_masses_and_both_tails_agree_with_high_precision_up_to_a_million_frames()
    {
        SpecialValues.Agree("binomiallogmass", 1e-13, v => Binomial.LogMass(v[0], v[1], v[2], 1 - v[2]), floor: 1);
        SpecialValues.Agree("binomialatleast", 1e-12, v => Binomial.Tails(v[0], v[1], v[2], 1 - v[2]).AtLeast);
        SpecialValues.Agree("binomialfewer", 1e-12, v => Binomial.Tails(v[0], v[1], v[2], 1 - v[2]).Fewer, floor: 1e-280);
        Assert.Equal((1, 0), Binomial.Tails(0, 10, 0.3, 0.7));
        Assert.Equal((0, 1), Binomial.Tails(11, 10, 0.3, 0.7));
    }

    [Fact]
    public void Beta_binomial_masses_and_both_tails_agree_with_high_precision()
    {
        SpecialValues.Agree("betabinomiallogmass", 1e-13, v => BetaBinomial.LogMass(v[0], v[1], v[2], v[3]), floor: 1);
        SpecialValues.Agree("betabinomialatleast", 1e-14, v => BetaBinomial.Tails((int)v[0], (int)v[1], v[2], v[3]).AtLeast, floor: 1);
        SpecialValues.Agree("betabinomialfewer", 1e-14, v => BetaBinomial.Tails((int)v[0], (int)v[1], v[2], v[3]).Fewer, floor: 1);
    }
}
