using Handhold.Fitting;
using Handhold.Kernels;

namespace Handhold.Tests.Kernels;

public class AllocationFacts
{
    [Fact]
    public void Kernels_allocate_nothing_after_warm_up()
    {
        double total = 0;
        for (var i = 0; i < 3; i++)
            total += AskEverything();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            total += AskEverything();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(total));
    }

    private static double AskEverything() =>
        Elementary.Log1p(0.3)
        + Elementary.Expm1(0.3)
        + Elementary.Softplus(-3)
        + Elementary.Logistic(2).Mu
        + Elementary.Logit(0.2)
        + Normal.Cdf(-2)
        + Normal.Density(1)
        + Normal.Quantile(0.01)
        + GammaFunctions.LogGamma(3.3)
        + GammaFunctions.LogBeta(3.3, 40)
        + GammaFunctions.LogBinomial(30, 4)
        + Beta.Tails(0.3, 0.7, 2, 5).Upper
        + Beta.Quantile(0.025, 0.5, 20).X
        + Binomial.LogMass(3, 10, 0.2, 0.8)
        + Binomial.Tails(3, 1000, 0.01, 0.99).Fewer
        + BetaBinomial.LogMass(3, 10, 1.8, 7.2)
        + BetaBinomial.Tails(3, 10, 1.8, 7.2).AtLeast
        + FramesLikelihood.LogLikelihood(new(1.6, 0.97, 0.01), -5, [-6, -4], [6, 6], [5, 1])
        + Filled();

    private static double Filled()
    {
        Span<double> keeper = stackalloc double[20];
        Span<double> reject = stackalloc double[20];
        FramesLikelihood.Fill(new(1.6, 0.97, 0), -5, -8, 0.3, keeper, reject);
        return keeper[0] + reject[^1];
    }
}
