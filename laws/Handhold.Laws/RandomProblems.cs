using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Laws;

/// <summary>Problems of every shape the solvers take: few rows, a frame a row or a dozen or a million, steep or level, all links, separated or aliased as it comes.</summary>
internal static class RandomProblems
{
    /// <summary>Up to four columns, the first an intercept; asymptotes fixed off their bounds if asked.</summary>
    internal static BinomialProblem Draw(RandomStream luck, bool asymptotes = false)
    {
        var columns = 1 + Below(luck, 4);
        var frames = luck.Happens(0.1) ? 1_000_000 : 1 + Below(luck, 12);
        var levels = luck.Happens(0.5);
        double[] b = [.. Enumerable.Range(0, columns).Select(_ => 2 * luck.Normal())];
        double[][] x = [.. Enumerable.Range(0, columns + Below(luck, 9)).Select(i => Row(luck, columns, i, levels))];
        var ceiling = asymptotes && luck.Happens(0.7) ? 0.9 + 0.1 * luck.Uniform() : 1;
        var floor = asymptotes && luck.Happens(0.3) ? 0.1 * luck.Uniform() : 0;
        int[] keepers = [.. x.Select(row => Keepers(luck, frames, floor + (ceiling - floor) / (1 + Math.Exp(-Dot(row, b)))))];
        return new(
            [.. b.Select((_, j) => FormattableString.Invariant($"x{j}"))],
            x.SelectMany(row => row).ToArray(),
            Enumerable.Repeat(frames, x.Length).ToArray(),
            keepers
        )
        {
            Link = (Link)Below(luck, 3),
            Ceiling = ceiling,
            Floor = floor,
        };
    }

    // An intercept, half steps of a covariate, perhaps two levels.
    private static double[] Row(RandomStream luck, int columns, int row, bool levels) =>
        [1, .. Enumerable.Range(1, columns - 1).Select(j => levels && j == 2 ? row % 2 : Math.Round(4 * luck.Normal()) / 2)];

    private static int Keepers(RandomStream luck, int frames, double rate) =>
        frames > 1000 ? (int)Math.Round(frames * rate) : Enumerable.Range(0, frames).Count(_ => luck.Happens(rate));

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static int Below(RandomStream luck, int end) => (int)(end * luck.Uniform());
}
