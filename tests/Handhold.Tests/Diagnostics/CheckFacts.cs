using Handhold.Diagnostics;

namespace Handhold.Tests.Diagnostics;

public class CheckFacts
{
    private static readonly KeeperModel Likelihood = KeeperModel.Default with { Estimator = Estimator.Likelihood };
    private static readonly KeeperModel BiasReduced = KeeperModel.Default with { Estimator = Estimator.BiasReduced };

    private static FrameTable Table(params int[] keepers) =>
        [.. keepers.Select((k, i) => new FrameCell(ShutterSpeed.FromLog2Seconds(i - 8), 20, k) { Conditions = new() { Burst = $"{i}" } })];

    [Fact]
    public void Hat_values_add_up_to_the_number_of_coefficients() =>
        Assert.Equal(2, Likelihood.Fit(Table(20, 18, 12, 9, 5, 1)).Only.Check().Cells.Sum(c => c.Leverage!.Value), 1e-8);

    [Fact]
    public void An_estimated_ceiling_counts_among_the_numbers_that_cells_fix()
    {
        var fit = (Likelihood with { Ceiling = Ceiling.Estimated }).Fit(Table(18, 17, 18, 14, 8, 2, 0)).Only;
        Assert.NotNull(fit.Linear!.CeilingStandardError);
        Assert.Equal(3, fit.Check().Cells.Sum(c => c.Leverage!.Value), 1e-8);
    }

    [Fact]
    public void Influence_is_what_fitting_without_the_cell_gives()
    {
        var table = Table(20, 18, 12, 9, 5, 1);
        var without = BiasReduced.Fit([.. table.Where((_, i) => i != 3)]).Only.ExposureFor(0.8).Exposure!.Value;
        var influence = BiasReduced.Fit(table).Only.Check(rate: 0.8).Cells[3].Influence!.Value;
        Assert.Equal(without.SlowerThan(BiasReduced.Fit(table).Only.ExposureFor(0.8).Exposure!.Value).Value, influence.Value, 1e-7);
    }

    [Fact]
    public void Leaving_a_cell_out_of_a_posterior_by_weights_is_fitting_without_it()
    {
        var table = Table(20, 18, 12, 9, 5, 1);
        var whole = KeeperModel.Default.Fit(table).Only;
        var checks = whole.Check(rate: 0.5);
        for (var left = 0; left < table.Count; left++)
        {
            var rest = KeeperModel.Default.Fit([.. table.Where((_, i) => i != left)]).Only;
            var moved = Tau(rest) - Tau(whole);
            Assert.Equal(moved, checks.Cells[left].Influence!.Value.Value, 0.05);
        }

        static double Tau(KeeperCurve curve) =>
            curve.ExposureFor(0.5, new() { BeyondTested = true, CheckPriors = false }).Exposure!.Value.Log2Seconds;
    }

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    public void Log_predictive_density_is_the_chance_that_the_rest_gives_to_the_cell(Estimator estimator)
    {
        // One cell of the curve holds 20 of 20 far on the safe side: the rest gives it a chance near one.
        var checks = (KeeperModel.Default with { Estimator = estimator, Ceiling = Ceiling.One })
            .Fit(Table(20, 20, 18, 12, 5, 1))
            .Only.Check();
        Assert.InRange(checks.Cells[0].LogPredictiveDensity!.Value, -0.6, 0);
        Assert.All(checks.Cells, c => Assert.True(c.LogPredictiveDensity < 0));
        Assert.Equal(checks.Cells.Sum(c => c.LogPredictiveDensity!.Value), checks.LogPredictiveDensity!.Value, 1e-12);
    }

    /// <summary>The chance that the rest gives to a cell is the quotient of the evidences with and without it, luck of day and bursts included.</summary>
    [Fact]
    public void Log_predictive_densities_are_differences_of_evidence()
    {
        FrameTable table =
        [
            .. from i in Enumerable.Range(0, 5)
            from burst in Enumerable.Range(0, 2)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(i - 8), 4, Math.Clamp(5 - i - burst, 0, 4))
            {
                Conditions = new() { Session = "monday", Burst = $"{i}{burst}" },
            },
        ];
        var whole = KeeperModel.Default.Fit(table);
        var checks = whole.Only.Check();
        foreach (var cell in checks.Cells)
        {
            var without = KeeperModel.Default.Fit([.. table.Where(row => row.Conditions.Burst != cell.Cells[0].Conditions.Burst)]);
            Assert.Equal(whole.LogEvidence - without.LogEvidence, cell.LogPredictiveDensity!.Value, 0.03);
        }
    }

    [Fact]
    public void A_ceiling_that_frames_contradict_predicts_worse()
    {
        var table = Table(17, 18, 17, 16, 8, 1);
        Assert.True(
            (KeeperModel.Default with { Ceiling = Ceiling.Fixed(0.9) }).Fit(table).Only.Check().LogPredictiveDensity
                > (KeeperModel.Default with { Ceiling = Ceiling.One }).Fit(table).Only.Check().LogPredictiveDensity + 1
        );
    }

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    [InlineData(Estimator.Likelihood)]
    public void Residuals_are_seeded_and_stand_out_where_the_curve_does_not_fit(Estimator estimator)
    {
        var curve = (KeeperModel.Default with { Estimator = estimator }).Fit(Table(20, 19, 4, 17, 12, 3, 1)).Only;
        var (one, again, other) = (curve.Check(seed: 1), curve.Check(seed: 1), curve.Check(seed: 2));
        Assert.Equal(one.Cells.Select(c => c.Residual), again.Cells.Select(c => c.Residual));
        Assert.NotEqual(one.Cells.Select(c => c.Residual), other.Cells.Select(c => c.Residual));
        Assert.True(one.Cells[2].Residual < -2.5);
        Assert.Equal(one.Speeds[2], one.LargestGap);
        Assert.StartsWith("Farthest from what the other speeds expect: 1/64 s, ", one.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Observed_rates_carry_exact_intervals()
    {
        var speed = Likelihood.Fit(Table(20, 18, 12, 9, 5, 1)).Only.Check().Speeds[2];
        // Clopper-Pearson for 12 of 20 at 95 %.
        Assert.Equal(0.360543, speed.Observed.Lower, 1e-5);
        Assert.Equal(0.808809, speed.Observed.Upper, 1e-5);
    }

    [Fact]
    public void Where_separation_leaves_nothing_finite_numbers_are_absent()
    {
        var checks = Likelihood.Fit(Table(20, 20, 20, 0, 0)).Only.Check();
        Assert.All(checks.Cells, c => Assert.Null(c.LogPredictiveDensity));
        Assert.All(checks.Cells, c => Assert.Null(c.Leverage));
        Assert.Null(checks.LogPredictiveDensity);
        Assert.Equal("", checks.Sentence);
    }
}
