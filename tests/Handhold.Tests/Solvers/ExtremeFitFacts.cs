using Handhold.Solvers;
using static Handhold.Tests.Solvers.Problems;

namespace Handhold.Tests.Solvers;

public class ExtremeFitFacts
{
    private static readonly double[] X = [-4, -3, -2, -1, 0, 1, 2, 3, 4];
    private static readonly int[] Frames = [6, 6, 6, 6, 6, 6, 6, 6, 6];
    private static readonly int[] Keepers = [6, 6, 5, 6, 3, 2, 3, 0, 0];

    public static TheoryData<BinomialEstimator, Link> Fits =>
        [.. from estimator in Enum.GetValues<BinomialEstimator>() from link in Enum.GetValues<Link>() select (estimator, link)];

    [Theory]
    [MemberData(nameof(Fits))]
    public void A_covariate_a_million_steps_from_zero_keeps_nine_digits(BinomialEstimator estimator, Link link)
    {
        const double Away = 2_500_000; // its columns' condition is two million
        var near = Fit(estimator, Line(X, Frames, Keepers) with { Link = link });
        var far = Fit(estimator, Line([.. X.Select(x => x + Away)], Frames, Keepers) with { Link = link });
        Near(near.Coefficients[1], far.Coefficients[1], 1e-9);
        Near(near.Coefficients[0] - near.Coefficients[1] * Away, far.Coefficients[0], 1e-9);
        Near(near.StandardError(1), far.StandardError(1), 1e-9);
        Near(near.StandardError([1, -Away]), far.StandardError(0), 1e-9);
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void Columns_that_differ_in_a_millionth_keep_nine_digits(BinomialEstimator estimator, Link link)
    {
        // w = u + v/2^20 exactly, so that b of u and w are c of u - 2^20 c of v, and 2^20 c of v.
        const double Scale = 1 << 20;
        double[] v = [1, -1, 1, 1, -1, -1, 1, -1, 1];
        BinomialProblem Two(double u, double w) =>
            new(["intercept", "u", "w"], X.SelectMany((x, i) => new[] { 1, x, u * x + w * v[i] }).ToArray(), Frames, Keepers)
            {
                Link = link,
            };
        var (apart, alike) = (Fit(estimator, Two(0, 1)).Coefficients, Fit(estimator, Two(1, 1 / Scale)).Coefficients);
        Near(apart[0], alike[0], 1e-9);
        Near(apart[1] - Scale * apart[2], alike[1], 1e-9);
        Near(Scale * apart[2], alike[2], 1e-9);
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void A_million_frames_a_cell_change_only_what_frames_change(BinomialEstimator estimator, Link link)
    {
        const int Times = 1_000_000;
        var few = Fit(BinomialEstimator.Likelihood, Line(X, Frames, Keepers) with { Link = link });
        var many = Fit(estimator, Line(X, [.. Frames.Select(n => n * Times)], [.. Keepers.Select(k => k * Times)]) with { Link = link });
        // The penalty is worth a frame or so.
        var tolerance = estimator == BinomialEstimator.Likelihood ? 1e-9 : 1e-5;
        Near(few.Coefficients[1], many.Coefficients[1], tolerance);
        Assert.InRange(many.StandardError(1) * Math.Sqrt(Times) / few.StandardError(1), 0.5, 2);
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void Tails_beyond_rates_of_1e_300_add_nothing(BinomialEstimator estimator, Link link)
    {
        var plain = Fit(estimator, Line(X, Frames, Keepers) with { Link = link });
        var tailed = Fit(estimator, Line([-3000, .. X, 3000], [6, .. Frames, 6], [6, .. Keepers, 0]) with { Link = link });
        for (var j = 0; j < 2; j++)
        {
            Near(plain.Coefficients[j], tailed.Coefficients[j], 1e-10);
            Near(plain.StandardError(j), tailed.StandardError(j), 1e-10);
        }
        Assert.Equal(plain.LogLikelihood, tailed.LogLikelihood, 1e-9);
    }

    [Theory]
    [InlineData(Link.Logit)]
    [InlineData(Link.Probit)]
    [InlineData(Link.Cloglog)]
    public void A_keeper_where_the_rate_is_below_1e_300_costs_a_finite_likelihood(Link link)
    {
        SolverOptions steep = new() { Held = new([0, 1], -40) };
        var fit = BinomialSolver.Likelihood(Line([.. X, 18], [.. Frames, 1], [.. Keepers, 1]) with { Link = link }, steep);
        Assert.True(fit.LogLikelihood is < -300 and > -1e6);
        Assert.True(double.IsFinite(fit.Coefficients[0]) && fit.StandardError(0) is > 0 and < 1e3);
    }

    private static BinomialEstimate Fit(BinomialEstimator estimator, BinomialProblem problem) =>
        estimator == BinomialEstimator.Likelihood ? BinomialSolver.Likelihood(problem) : BinomialSolver.BiasReduced(problem);
}
