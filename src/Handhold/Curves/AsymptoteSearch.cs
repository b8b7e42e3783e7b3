using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The highest log-likelihood over the ceiling and floor that a problem leaves to be estimated.</summary>
internal static class AsymptoteSearch
{
    private const double Widest = 14; // logits
    private const double Fine = 1e-4;
    private const double Golden = 0.618033988749894848;

    /// <param name="problem">Says what is fixed.</param>
    /// <param name="rate">A rate that stays between floor and ceiling.</param>
    /// <param name="at">The log-likelihood at a ceiling and a floor.</param>
    internal static double Highest(BinomialProblem problem, double rate, Func<double, double, double> at) =>
        Over(
            problem.Floor,
            t => rate * Elementary.Logistic(t).Mu,
            floor => Over(problem.Ceiling, t => rate + (1 - rate) * Elementary.Logistic(t).Mu, ceiling => at(ceiling, floor))
        );

    private static double Over(double? known, Func<double, double> asymptote, Func<double, double> at)
    {
        if (known is { } fixedOne)
            return at(fixedOne);
        var (low, high) = (-Widest, Widest);
        var (left, right) = (high - Golden * (high - low), low + Golden * (high - low));
        var (atLeft, atRight) = (at(asymptote(left)), at(asymptote(right)));
        while (high - low > Fine)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - Golden * (high - low);
                atLeft = at(asymptote(left));
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + Golden * (high - low);
                atRight = at(asymptote(right));
            }
        }

        return Math.Max(atLeft, atRight);
    }
}
