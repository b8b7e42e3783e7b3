using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>How a shoot may be split into bursts with a fresh grip each, since frames of one burst share its luck.</summary>
internal static class SplitQuestion
{
    private const int MostBursts = 6;

    /// <summary>For 2 to 6 bursts the smallest equal size that attains the assurance, as long as it takes no more frames than one burst.</summary>
    internal static ImmutableArray<ShootSplit> Splits(
        IRateLaw law,
        double exposure,
        int keepers,
        double assurance,
        int inOneBurst,
        CancellationToken cancellation
    )
    {
        var splits = ImmutableArray.CreateBuilder<ShootSplit>();
        for (var bursts = 2; bursts <= Math.Min(MostBursts, inOneBurst); bursts++)
        {
            var (fails, holds) = (0, inOneBurst / bursts);
            if (Attained(holds) < assurance)
                continue;
            while (holds - fails > 1)
            {
                var middle = (fails + holds) / 2;
                if (Attained(middle) >= assurance)
                    holds = middle;
                else
                    fails = middle;
            }

            splits.Add(new(bursts, holds, Attained(holds)));

            double Attained(int size) =>
                keepers > bursts * size || law.Bursts(exposure, size) is not { } several
                    ? 0
                    : Math.Clamp(1 - several.Fewer(keepers, bursts, size, 0, cancellation).Sum(), 0, 1);
        }

        return splits.ToImmutable();
    }
}
