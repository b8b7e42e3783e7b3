namespace Handhold.Laws.Tests;

/// <summary>The short form of the law on levels that vary; the full form is the program laws/Handhold.Laws.</summary>
public class LevelCalibrationLaw
{
    private const int Clubs = 16;

    [Fact]
    public void Truths_lie_anywhere_in_their_posteriors_alike()
    {
        // Sixteen uniform numbers exceed 0.48 once in a thousand times.
        foreach (var (name, shares) in LevelCalibration.Shares(0, Clubs))
            Assert.True(LevelCalibration.Distance(shares) < 0.48, name);
    }
}
