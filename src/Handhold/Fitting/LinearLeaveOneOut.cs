using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>What the other speeds lead to expect of the keepers at each speed, for the likelihood and bias-reduced estimators.</summary>
/// <remarks>The coefficients are fitted without a speed and doubted as their covariance says; frames are independent. Speeds without which no finite estimate exists are left out.</remarks>
internal static class LinearLeaveOneOut
{
    private const int Points = 256;

    internal static ImmutableArray<ExpectedCount> Of(KeeperModel model, CurveData data, LinearFit linear) =>
        linear.HasExposure ? [.. data.Speeds.Select(speed => Expected(model, linear.Likelihood, speed)).OfType<ExpectedCount>()] : [];

    private static ExpectedCount? Expected(KeeperModel model, CurveLikelihood likelihood, SpeedCount speed)
    {
        var (problem, at) = (likelihood.Problem, speed.Exposure.Log2Seconds);
        int[] held = [.. Enumerable.Range(0, problem.Rows).Where(row => problem.Design.Span[row * problem.Columns.Length + 1] == at)];
        if (likelihood.Without(held) is not { } others)
            return null;
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

            var count = CountLaw.Nothing;
            foreach (var row in held)
            {
                var eta = Orthonormal.Dot(problem.Design.Span.Slice(row * size, size), coefficients);
                RatePoint rate = new(problem.Link, eta, others.Ceiling, others.Floor);
                count = count.Plus(CountLaw.Binomial(problem.Frames.Span[row], rate.Rate, rate.Miss));
            }

            var (below, same, above) = count.Around(speed.Keepers);
            fewer += below / Points;
            exactly += same / Points;
            more += above / Points;
            mean += count.Mean / Points;
        }

        return new(speed, mean / speed.Frames, fewer, exactly, more);
    }
}
