using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>Keepers over several bursts that share nothing: exact convolution.</summary>
/// <param name="one">Keepers of one.</param>
internal sealed class FreshBursts(IBurstLaw one) : IBurstsLaw
{
    /// <inheritdoc />
    public double[] Fewer(int below, int full, int burstsOf, int rest, CancellationToken cancellation = default)
    {
        var (counts, product) = (new double[below], new double[below]);
        IndependentCounts.Repeat(InBurst(burstsOf), full, counts);
        if (rest == 0)
            return counts;
        IndependentCounts.Add(counts, InBurst(rest), product);
        return product;

        double[] InBurst(int frames)
        {
            var law = new double[Math.Min(below, frames + 1)];
            for (var k = 0; k < law.Length; k++)
            {
                cancellation.ThrowIfCancellationRequested();
                law[k] = one.Exactly(k, frames);
            }

            return law;
        }
    }
}
