using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Tests;

/// <summary>A plain line takes a short way to its maximum; the general climb is what it is held against.</summary>
public class PlainLineFacts
{
    [Fact]
    public void The_short_way_ends_where_the_general_climb_ends()
    {
        for (var seed = 0; seed < 3000; seed++)
            Compare(seed);
    }

    // Its lower maximum, a flat line through the far row, is where climbs from even odds and from the likelihood's maximum end.
    [Fact]
    public void A_row_far_from_the_others_hides_no_higher_maximum()
    {
        double[] x = [-0.8472, 0.6937, 14.87, 0.6002, -0.9179, 0.7582];
        BinomialProblem problem = new(["intercept", "x"], x.SelectMany(at => (double[])[1, at]).ToArray(), Frames, Keepers);
        Assert.True(BinomialSolver.BiasReduced(problem).PenalisedLogLikelihood > -5.76);
    }

    private static readonly int[] Frames = [1, 5, 1, 1, 2, 6];
    private static readonly int[] Keepers = [1, 1, 0, 0, 2, 1];

    private static void Compare(int seed)
    {
        var problem = AnyLine(Seed.From(20250131).Stream(seed));
        foreach (var estimator in Enum.GetValues<BinomialEstimator>())
        {
            if (Attempt(() => Short(estimator, problem)) is not { } quick)
                continue;
            var slow = BinomialSolver.Top(estimator, problem, OrthonormalDesign.Of(problem), new()).Estimate;
            var (objective, expected) = (
                quick.PenalisedLogLikelihood ?? quick.LogLikelihood,
                slow.PenalisedLogLikelihood ?? slow.LogLikelihood
            );
            Assert.True(objective >= expected - 1e-8 * (1 + Math.Abs(expected)), $"{estimator} {seed}: {objective} below {expected}");
            for (var j = 0; j < 2; j++)
            {
                Assert.Equal(slow.Coefficients[j], quick.Coefficients[j], 1e-7 * slow.StandardError(j));
                Assert.Equal(slow.StandardError(j), quick.StandardError(j), 1e-7 * slow.StandardError(j));
            }
            Assert.Equal(slow.Deviance, quick.Deviance, 1e-8 * (1 + slow.Deviance));
        }
    }

    private static BinomialEstimate Short(BinomialEstimator estimator, BinomialProblem problem) =>
        estimator == BinomialEstimator.BiasReduced ? BinomialSolver.BiasReduced(problem) : BinomialSolver.Likelihood(problem);

    private static BinomialEstimate? Attempt(Func<BinomialEstimate> fit)
    {
        try
        {
            return fit();
        }
        catch (SolverException)
        {
            return null;
        }
    }

    // Steep and flat, lopsided and far away, with one frame a row and with a million.
    private static BinomialProblem AnyLine(RandomStream draws)
    {
        var rows = 3 + (int)(12 * draws.Uniform());
        var far = draws.Uniform() < 0.2 ? 1e4 * draws.Uniform() : 0;
        var uneven = draws.Uniform() < 0.3;
        var (middle, slope) = (6 * draws.Uniform() - 3, Math.Exp(4 * draws.Uniform() - 2));
        var (design, frames, keepers) = (new double[2 * rows], new int[rows], new int[rows]);
        var most = Math.Exp(draws.Uniform() < 0.2 ? 13 * draws.Uniform() : 2 * draws.Uniform());
        for (var i = 0; i < rows; i++)
        {
            var x = uneven ? 8 * draws.Uniform() - 4 : 8 * (i + 0.3 * draws.Uniform()) / rows - 4;
            (design[2 * i], design[2 * i + 1], frames[i]) = (1, x + far, 1 + (int)(most * draws.Uniform()));
            var p = 1 / (1 + Math.Exp(slope * (x - middle)));
            keepers[i] = frames[i] > 1000 ? (int)(p * frames[i]) : Enumerable.Range(0, frames[i]).Count(_ => draws.Uniform() < p);
        }
        return new(["intercept", "x"], design, frames, keepers);
    }
}
