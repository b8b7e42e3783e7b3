namespace Handhold.Curves;

/// <summary>Keepers of several bursts with a fresh grip each.</summary>
internal interface IBurstsLaw
{
    /// <summary>P(0), ..., P(<paramref name="below"/> - 1) keepers in <paramref name="full"/> bursts of <paramref name="burstsOf"/> and one of <paramref name="rest"/> frames.</summary>
    double[] Fewer(int below, int full, int burstsOf, int rest, CancellationToken cancellation = default);
}
