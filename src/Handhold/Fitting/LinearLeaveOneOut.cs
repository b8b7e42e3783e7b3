using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>What the other speeds lead to expect of the keepers at each speed, for the likelihood and bias-reduced estimators.</summary>
/// <remarks>The coefficients are fitted without a speed and doubted as their covariance says; frames are independent, or those of a burst share the luck estimated. Speeds without which no finite estimate exists are left out.</remarks>
internal static class LinearLeaveOneOut
{
    private const int Points = 256;

    internal static ImmutableArray<ExpectedCount> Of(KeeperModel model, CurveData data, LinearFit linear) =>
        linear.HasExposure ? [.. data.Speeds.Select(speed => Expected(model, linear.Likelihood, speed)).OfType<ExpectedCount>()] : [];

    private static ExpectedCount? Expected(KeeperModel model, CurveLikelihood likelihood, SpeedCount speed)
    {
        if (likelihood.Shared is { } shared)
            return shared.Without(At(shared.Problem.Rows)) is { } rest
                ? Averaged(model, speed, rest.Estimate, LuckyCounts.At(shared.Problem, At(shared.Problem.Rows), rest))
                : null;
        var (problem, held) = (likelihood.Problem, At(likelihood.Problem));
        return likelihood.Without(held) is { } others ? Averaged(model, speed, others, Independent) : null;

        HashSet<int> At(BinomialProblem rows) =>
            [.. Enumerable.Range(0, rows.Rows).Where(row => rows.Design.Span[row * rows.Columns.Length + 1] == speed.Exposure.Log2Seconds)];

        CountLaw Independent(double[] coefficients)
        {
            var count = CountLaw.Nothing;
            foreach (var row in held)
            {
                var (keep, miss) = Links.Capped(problem.Link, problem.Predictor(row, coefficients), others.Ceiling, others.Floor);
                count = count.Plus(CountLaw.Binomial(problem.Frames.Span[row], keep, miss));
            }

            return count;
        }
    }

    private static ExpectedCount? Averaged(KeeperModel model, SpeedCount speed, BinomialEstimate others, Func<double[], CountLaw> law)
    {
        var size = others.Coefficients.Length;
        var factor = others.Covariance.ToArray();
        if (!Cholesky.Factor(factor, size, 0))
            return null;
        var chance = Seed.From(model.Seed).Stream(1);
        Sobol cube = new([.. Enumerable.Range(0, size).Select(_ => chance.Bits())]);
        var (normal, coefficients) = (new double[size], new double[size]);
        var (fewer, exactly, more, mean) = (0.0, 0.0, 0.0, 0.0);
        for (var k = 0; k < Points; k++)
        {
            cube.Write(k, normal);
            for (var i = 0; i < size; i++)
            {
                normal[i] = Normal.Quantile(normal[i]);
                coefficients[i] = others.Coefficients[i];
                for (var j = 0; j <= i; j++)
                    coefficients[i] += factor[i * size + j] * normal[j];
            }

            var count = law(coefficients);
            var (below, same, above) = count.Around(speed.Keepers);
            fewer += below / Points;
            exactly += same / Points;
            more += above / Points;
            mean += count.Mean / Points;
        }

        return new(speed, mean / speed.Frames, fewer, exactly, more);
    }
}
