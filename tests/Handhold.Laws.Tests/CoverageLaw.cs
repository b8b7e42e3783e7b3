namespace Handhold.Laws.Tests;

/// <summary>The short form; the full forms are part of laws/Handhold.Laws.</summary>
public class CoverageLaw
{
    // Three frames at each of seven speeds. The tables left out count as missed.
    [Fact]
    public void A_bias_reduced_interval_of_an_exposure_contains_it_in_93_of_100_tests()
    {
        (double, double)[] curves = [(1.6, 0), (1.6, 0.5), (3.2, 0), (3.2, 0.5)];
        foreach (var point in Coverage.Enumerated(Estimator.BiasReduced, frames: 3, curves, threads: 2, leftOut: 0.005))
            Assert.All(point.Covered, covered => Assert.True(covered >= CoverageReport.Least, $"{point}"));
    }
}
