using Handhold.Kernels;

namespace Handhold.Tests.Kernels;

public class ElementaryAndNormalFacts
{
    [Fact]
    public void Log1p_and_expm1_keep_all_digits_of_small_arguments()
    {
        SpecialValues.Agree("log1p", 5e-16, v => Elementary.Log1p(v[0]));
        SpecialValues.Agree("expm1", 6e-16, v => Elementary.Expm1(v[0]));
    }

    [Fact]
    public void Log1p_and_expm1_meet_their_limits()
    {
        Assert.Equal(double.NegativeInfinity, Elementary.Log1p(-1));
        Assert.Equal(double.PositiveInfinity, Elementary.Log1p(double.PositiveInfinity));
        Assert.True(double.IsNaN(Elementary.Log1p(-1.5)));
        Assert.Equal(-1, Elementary.Expm1(double.NegativeInfinity));
        Assert.Equal(double.PositiveInfinity, Elementary.Expm1(double.PositiveInfinity));
    }

    [Fact]
    public void Softplus_is_right_in_both_tails()
    {
        SpecialValues.Agree("softplus", 5e-16, v => Elementary.Softplus(v[0]));
        SpecialValues.Agree("loglogistic", 5e-16, v => Elementary.LogLogistic(v[0]));
        Assert.Equal(800, Elementary.Softplus(800));
        Assert.Equal(0, Elementary.Softplus(-800));
        Assert.Equal(-800, Elementary.LogLogistic(-800));
    }

    [Fact]
    public void Logistic_keeps_both_tails()
    {
        SpecialValues.Agree("logistic", 5e-16, v => Elementary.Logistic(v[0]).Mu);
        SpecialValues.Agree("logistic", 5e-16, v => Elementary.Logistic(-v[0]).OneMinusMu);
        SpecialValues.Agree("logistic", 2e-15, v => Elementary.AgainstOdds(Math.Exp(-v[0])).Mu);
        Assert.Equal((0, 1), Elementary.AgainstOdds(double.PositiveInfinity));
        Assert.Equal((1, 1e-300), Elementary.AgainstOdds(1e-300));
        Assert.True(Elementary.Logistic(700).OneMinusMu > 0);
        Assert.Equal((1, 0), Elementary.Logistic(800));
    }

    [Fact]
    public void Logit_is_right_near_a_half_and_in_the_tails()
    {
        SpecialValues.Agree("logit", 5e-16, v => Elementary.Logit(v[0]));
        Assert.Equal(0, Elementary.Logit(0.5));
        Assert.Equal(double.NegativeInfinity, Elementary.Logit(0));
        Assert.Equal(double.PositiveInfinity, Elementary.Logit(1));
    }

    [Fact]
    public void Normal_distribution_is_right_in_both_tails()
    {
        SpecialValues.Agree("normalcdf", 1e-15, v => Normal.Cdf(v[0]));
        SpecialValues.Agree("normaldensity", 1e-15, v => Normal.Density(v[0]));
        Assert.Equal((0, 1), (Normal.Cdf(double.NegativeInfinity), Normal.Cdf(double.PositiveInfinity)));
        Assert.Equal(0, Normal.Density(double.PositiveInfinity));
    }

    [Fact]
    public void Normal_quantile_is_right_in_both_tails()
    {
        SpecialValues.Agree("normalquantile", 1e-15, v => Normal.Quantile(v[0]));
        Assert.Equal(0, Normal.Quantile(0.5));
        Assert.Equal(double.NegativeInfinity, Normal.Quantile(0));
        Assert.Equal(double.PositiveInfinity, Normal.Quantile(1));
        Assert.True(double.IsNaN(Normal.Quantile(1.5)));
    }
}
