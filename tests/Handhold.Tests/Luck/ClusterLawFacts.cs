using System.Collections.Immutable;
using Handhold.Solvers;

namespace Handhold.Tests.Luck;

public class ClusterLawFacts
{
    private const double Step = 1e-5;

    public static TheoryData<Link, double, double> Shapes { get; } =
        new()
        {
            { Link.Logit, 1, 0 },
            { Link.Probit, 1, 0 },
            { Link.Cloglog, 1, 0 },
            { Link.Logit, 0.95, 0.02 },
        };

    private static ClusteredProblem Problem(Link link, double ceiling, double floor, int[] frames, int[] keepers) =>
        new(
            new(["intercept"], Enumerable.Repeat(1.0, frames.Length).ToArray(), frames, keepers)
            {
                Link = link,
                Ceiling = ceiling,
                Floor = floor,
            },
            [0, frames.Length],
            [1],
            frames.Length,
            0
        );

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Slopes_and_bends_of_normal_luck_are_those_of_its_quadrature(Link link, double ceiling, double floor)
    {
        var problem = Problem(link, ceiling, floor, [3, 1, 4], [2, 1, 1]);
        double[] predictors = [0.8, 0.3, -1.1];
        foreach (var nodes in new[] { 1, 5, 40 })
            Agree(new NormalShift(problem, HermiteNodes.Of(nodes)), [2, 1, 1], [1, 0, 3], predictors, 0.9, bends: nodes == 40);
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Slopes_and_bends_of_beta_rates_are_exact(Link link, double ceiling, double floor)
    {
        foreach (var (keepers, rejects) in new[] { (3, 2), (0, 4), (5, 0), (1, 0) })
            Agree(new BetaRates(Problem(link, ceiling, floor, [5], [3])), [keepers], [rejects], [-0.4], 0.7, bends: true);
    }

    private static void Agree(IClusterLaw law, int[] keepers, int[] rejects, double[] predictors, double spread, bool bends)
    {
        var size = predictors.Length + 1;
        var (gradient, curvature) = (new double[size], new double[size * size]);
        var value = law.Evaluate(new(predictors, keepers, rejects), spread, gradient, curvature);
        Assert.Equal(law.LogLikelihood(new(predictors, keepers, rejects), spread), value, 1e-14);
        for (var a = 0; a < size; a++)
        {
            var (up, down) = (Moved(a, Step), Moved(a, -Step));
            Assert.Equal((up.Value - down.Value) / (2 * Step), gradient[a], 1e-8);
            for (var b = 0; bends && b <= a; b++)
                Assert.Equal(-(up.Gradient[b] - down.Gradient[b]) / (2 * Step), curvature[a * size + b], 1e-7);
        }

        (double Value, ImmutableArray<double> Gradient) Moved(int place, double by)
        {
            double[] moved = [.. predictors];
            if (place < moved.Length)
                moved[place] += by;
            var slopes = new double[size];
            var there = law.Evaluate(
                new(moved, keepers, rejects),
                place < moved.Length ? spread : spread + by,
                slopes,
                new double[size * size]
            );
            return (there, [.. slopes]);
        }
    }
}
