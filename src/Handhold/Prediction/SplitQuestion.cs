using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>How a shoot may be split into bursts with a fresh grip each, since frames of one burst share its luck.</summary>
internal static class SplitQuestion
{
    private const int MostBursts = 6;

    /// <summary>For 2 to 6 bursts the smallest equal size that attains the assurance with no more frames than <paramref name="most"/>.</summary>
    internal static ImmutableArray<ShootSplit> Splits(
        IRateLaw law,
        double exposure,
        int keepers,
        double assurance,
        int most,
        CancellationToken cancellation
    )
    {
        var (splits, shoot) = (ImmutableArray.CreateBuilder<ShootSplit>(), law.Bursts(exposure));
        for (var bursts = 2; bursts <= Math.Min(MostBursts, most); bursts++)
        {
            var (fails, holds) = (0, most / bursts);
            if (Attained(shoot, keepers, bursts, holds, cancellation) < assurance)
                continue;
            while (holds - fails > 1)
            {
                var middle = (fails + holds) / 2;
                if (Attained(shoot, keepers, bursts, middle, cancellation) >= assurance)
                    holds = middle;
                else
                    fails = middle;
            }

            splits.Add(new(bursts, holds, Attained(shoot, keepers, bursts, holds, cancellation)));
        }

        return splits.ToImmutable();
    }

    /// <summary>Of 2 to 6 equal bursts within a budget of frames, those that attain most; null where it has not two frames.</summary>
    internal static ShootSplit? OfBudget(IRateLaw law, double exposure, int keepers, int budget, CancellationToken cancellation)
    {
        var shoot = law.Bursts(exposure);
        return Enumerable
            .Range(2, MostBursts - 1)
            .Where(bursts => bursts <= budget)
            .Select(bursts => new ShootSplit(bursts, budget / bursts, Attained(shoot, keepers, bursts, budget / bursts, cancellation)))
            .MaxBy(split => split.Assurance);
    }

    private static double Attained(IBurstsLaw shoot, int keepers, int bursts, int size, CancellationToken cancellation) =>
        keepers > bursts * size ? 0 : Math.Clamp(1 - shoot.Fewer(keepers, bursts, size, 0, cancellation).Sum(), 0, 1);
}
