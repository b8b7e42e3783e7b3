namespace Handhold;

/// <summary>The calculator: frames needed when the keeper rate and the correlation within a burst are known.</summary>
public static class KnownRate
{
    /// <summary>Smallest number of frames; beta-binomial within a burst, independent between bursts.</summary>
    /// <param name="rate">Known keeper rate, 0 to 1.</param>
    /// <param name="correlation">Correlation of two frames of one burst, from 0 to below 1.</param>
    /// <param name="keepers">Keepers wanted, at least 1.</param>
    /// <param name="assurance">Assurance wanted, above 0 and below 1.</param>
    /// <param name="burstsOf">Frames a burst; null: all in one burst.</param>
    /// <param name="budget">Largest number of frames considered.</param>
    public static KnownRateAnswer FramesNeeded(
        double rate,
        double correlation,
        int keepers,
        double assurance,
        int? burstsOf = null,
        int budget = 1000
    ) => throw new NotSupportedException();
}
