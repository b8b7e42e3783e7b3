using Handhold.Solvers;

namespace Handhold.Tests;

public class LogisticLineFacts
{
    private static readonly double[] Stops = [-8, -7, -6, -5, -4, -3, -2, -1, 0];
    private static readonly int[] Frames = [6, 6, 6, 6, 6, 6, 6, 6, 6];
    private static readonly int[] Keepers = [6, 6, 5, 6, 4, 3, 1, 0, 0];

    [Fact]
    public void The_score_is_zero_at_the_estimate()
    {
        var fit = Fit(Stops, Frames, Keepers);
        Assert.True(fit.Converged);
        var residuals = Stops.Select((x, i) => Keepers[i] - Frames[i] / (1 + Math.Exp(-fit.Intercept - fit.Slope * x))).ToArray();
        Assert.Equal(0, residuals.Sum(), 1e-7);
        Assert.Equal(0, residuals.Zip(Stops, (r, x) => r * x).Sum(), 1e-7);
    }

    [Fact]
    public void Two_cells_are_met_exactly()
    {
        var fit = Fit([0, 2], [4, 4], [3, 1]);
        Assert.Equal(Math.Log(3), fit.Intercept, 1e-12);
        Assert.Equal(-Math.Log(3), fit.Slope, 1e-12);
        Assert.Equal(2 * (3 * Math.Log(0.75) + Math.Log(0.25)), fit.LogLikelihood, 1e-12);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(-20)]
    public void Shifting_all_exposures_changes_only_the_intercept(double shift)
    {
        var fit = Fit(Stops, Frames, Keepers);
        var shifted = Fit([.. Stops.Select(x => x + shift)], Frames, Keepers);
        Assert.Equal(fit.Slope, shifted.Slope, 1e-10);
        Assert.Equal(fit.Intercept - shift * fit.Slope, shifted.Intercept, 1e-8);
    }

    [Fact]
    public void Separated_cells_have_no_finite_estimate() => Assert.False(Fit([-3, -2, -1, 0], [6, 6, 6, 6], [6, 6, 0, 0]).Converged);

    private static LogisticFit Fit(double[] x, int[] frames, int[] keepers) => new LogisticLine(Design(x), frames, keepers).Likelihood();

    private static double[] Design(double[] x) => [.. x.SelectMany(at => (double[])[1, at])];

    [Fact]
    public void Fits_allocate_nothing()
    {
        var design = Design(Stops);
        double Both()
        {
            LogisticLine line = new(design, Frames, Keepers);
            return line.Likelihood().Deviance + line.BiasReduced().Objective;
        }
        Both();
        var before = GC.GetAllocatedBytesForCurrentThread();
        var total = Both();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(total));
    }
}
