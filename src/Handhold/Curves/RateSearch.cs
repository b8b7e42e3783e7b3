using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>Rates by their distribution function.</summary>
internal static class RateSearch
{
    private const double LargestLogit = 35;

    /// <summary>The rate at which a distribution function is p, from the estimate outwards: far rates may be costly to ask for.</summary>
    internal static double Quantile(Func<double, double> cdf, double estimate, double p)
    {
        var (centre, side) = (Elementary.Logit(estimate), p < 0.5 ? -1 : 1);
        if (!(Math.Abs(centre) < LargestLogit))
            centre = -side * LargestLogit;
        var (inside, excess) = (centre, Excess(centre));
        for (var reach = 0.5; ; reach *= 2)
        {
            var outside = Math.Clamp(centre + side * reach, -LargestLogit, LargestLogit);
            var there = Excess(outside);
            if (side * there >= 0 || Math.Abs(outside) == LargestLogit)
                return Elementary.Logistic(Root.Of(Excess, (inside, excess), (outside, there), 1e-10)).Mu;
            (inside, excess) = (outside, there);
        }

        double Excess(double logit) => cdf(Elementary.Logistic(logit).Mu) - p;
    }
}
