using Handhold.Kernels;
using Handhold.Solvers;
using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>A thousand invented photographers with four setups each, and the parts that rows are taken in.</summary>
public class ManyLevelFacts
{
    private const int Rows = 36;

    [Fact]
    public void A_thousand_photographers_have_the_maximum_that_two_other_programs_find()
    {
        var fit = new GroupedFit(Thousand(), nodes: null);
        foreach (var program in (string[])["lme4", "glmmTMB"])
        {
            var expected = Expected.Of("grouped-thousand", program);
            Assert.Equal(expected.GetProperty("logLikelihood").GetDouble(), fit.LogLikelihood, 1e-6);
            Assert.Equal(expected.GetProperty("beta").GetProperty("(Intercept)").GetDouble(), fit.Estimate.Coefficients[0], 1e-5);
            Assert.Equal(expected.GetProperty("beta").GetProperty("x").GetDouble(), fit.Estimate.Coefficients[1], 1e-5);
            Assert.Equal(expected.GetProperty("sds").GetProperty("photographer").GetDouble(), fit.SpreadOf(0, 0).Spread, 1e-5);
            Assert.Equal(expected.GetProperty("sds").GetProperty("own").GetDouble(), fit.SpreadOf(1, 0).Spread, 1e-5);
        }
    }

    [Fact]
    public void A_fit_that_is_cancelled_ends_and_so_does_a_profile_that_can_be_taken_up_again()
    {
        CancellationToken stopped = new(canceled: true);
        Assert.Throws<OperationCanceledException>(() => new GroupedFit(Thousand(), nodes: null, stopped));
        Assert.Throws<OperationCanceledException>(() => Groups.Model("nested").Fit(Groups.Table, cancellation: stopped));
        var fit = Groups.Model("nested").Fit(Groups.Table).Only.Linear!;
        Assert.Throws<OperationCanceledException>(() =>
            new GroupedProfile(fit.Likelihood.Grouped!.Fit, 0.95, stopped).SpreadInterval(0, 0)
        );
        Assert.Throws<OperationCanceledException>(() => fit.FindIntervals(cancellation: stopped));
        Assert.Equal(2, fit.Groups.Length);
    }

    [Fact]
    public void Photographers_taken_by_themselves_add_up_to_all_together()
    {
        var problem = Thousand();
        TurnedDesign basis = new(new(problem.Rows), []);
        double[] point = [100, -200, 0.8, -0.5];
        var (together, apart) = (new double[4], new double[4]);
        GroupedLaplace whole = new(problem, basis, 0, [new([1]), new([1])]);
        GroupedParts parts = new(problem, basis, [new([1]), new([1])]);
        Assert.Equal(1, parts.At(point, apart) / whole.At(point, together), 1e-12);
        foreach (var (one, other) in together.Zip(apart))
            Assert.Equal(one, other, 1e-6);
    }

    [Fact]
    public void Parts_share_no_level_and_leave_no_row_out()
    {
        var problem = Thousand();
        var parts = problem.Parts(100);
        Assert.Equal(334, parts.Length);
        Assert.Equal(problem.Rows.Rows, parts.Sum(p => p.Part.Rows.Rows));
        for (var t = 0; t < 2; t++)
            Assert.Equal(problem.Effects[t].Levels, parts.Sum(p => p.Part.Effects[t].Levels));
    }

    [Fact]
    public void Crossed_levels_are_one_part()
    {
        var problem = Thousand();
        LevelEffects lenses = new([.. Enumerable.Range(0, problem.Rows.Rows).Select(i => i / 9 % 4)], 4, [0]);
        Assert.Single((problem with { Effects = [problem.Effects[0], lenses] }).Parts(100));
    }

    [Fact]
    public void Eight_rows_at_a_time_are_those_one_by_one()
    {
        double[] predictors = [-800, -40, -3, -1e-9, 0, 0.3, 25, 750];
        double[] kept = [0, 1, 3, 2, 5, 0, 9, 4];
        double[] lost = [4, 0, 2, 7, 5, 6, 0, 1];
        var (score, weight, change) = (predictors.ToArray(), new double[8], new double[8]);
        var sum = LogitRows.Weigh(kept, lost, score, weight, change);
        var expected = 0.0;
        for (var i = 0; i < predictors.Length; i++)
        {
            RatePoint at = new(Link.Logit, predictors[i], 1, 0);
            expected += at.LogLikelihood(kept[i], lost[i]);
            Near(at.Score(kept[i], lost[i]), score[i]);
            Near(at.Observed(kept[i], lost[i]), weight[i]);
            // miss less keep cancels at the half point
            Assert.Equal(at.ObservedChange(kept[i], lost[i]), change[i], 1e-14 * weight[i]);
        }
        Near(expected, sum);

        static void Near(double one, double other) => Assert.Equal(one, other, 1e-14 * Math.Abs(one));
    }

    private static GroupedProblem Thousand()
    {
        var lines = File.ReadAllLines(GoldenFolder.PathOf("grouped-thousand", "keepers.txt"));
        int[] keepers = [.. lines.SelectMany(line => line.Select(digit => Convert.ToInt32(digit.ToString(), 16)))];
        double[] design = [.. keepers.SelectMany((_, i) => (double[])[1, i % 9 - 4])];
        return new(
            new(["intercept", "log2Exposure"], design, Enumerable.Repeat(10, keepers.Length).ToArray(), keepers),
            [
                new([.. keepers.Select((_, i) => i / Rows)], lines.Length, [0]),
                new([.. keepers.Select((_, i) => i / 9)], 4 * lines.Length, [0]),
            ]
        );
    }
}
