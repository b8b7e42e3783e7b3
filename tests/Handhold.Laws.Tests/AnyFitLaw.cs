namespace Handhold.Laws.Tests;

/// <summary>The short form; the full form, a hundred thousand, is part of laws/Handhold.Laws.</summary>
public class AnyFitLaw
{
    [Fact]
    public void Every_likelihood_and_bias_reduced_fit_gets_numbers_and_intervals_around_them() =>
        Assert.Empty(AnyFit.Faults(problems: 3000, threads: 2));
}
