using FsCheck.Xunit;
using Handhold.Kernels;

namespace Handhold.Tests.Prediction;

public class KnownRateLaws
{
    // Rates and correlations over many sizes from two bytes: near 0, near 1, and between.
    private static double Share(byte size, bool mirror)
    {
        var share = 0.5 * Math.Pow(10, -size / 32.0);
        return mirror ? 1 - share : share;
    }

    private static double Chance(double rate, double correlation, int keepers, int? burstsOf, int frames) =>
        KnownRate.FramesNeeded(rate, correlation, keepers, 1 - 1e-13, burstsOf, frames).Assurance;

    [Property(Replay = "(20250131,7)", MaxTest = 300)]
    public bool Adding_a_frame_never_lowers_the_chance_of_enough_keepers(byte r, bool mirror, byte c, byte k, byte m, byte n)
    {
        var (rate, correlation, keepers) = (Share(r, mirror), c == 0 ? 0 : Share(c, c % 2 == 0), 1 + k % 12);
        int? burstsOf = m % 3 == 0 ? null : 1 + m % 9;
        // Asked with the assurance out of reach, the answer tells the chance at the budget; once in reach it stays so.
        var chances = Enumerable.Range(1 + n % 50, 40).Select(frames => Chance(rate, correlation, keepers, burstsOf, frames)).ToList();
        return chances.Zip(chances.Skip(1)).All(pair => pair.Second >= pair.First - 1e-13)
            && chances.All(chance => chance is >= 0 and <= 1);
    }

    [Property(Replay = "(20250131,7)", MaxTest = 300)]
    public bool The_number_found_suffices_and_one_frame_less_does_not(byte r, bool mirror, byte c, byte k, byte m, byte l)
    {
        var (rate, correlation, keepers) = (Share(r, mirror), Share(c, false), 1 + k % 12);
        int? burstsOf = m % 3 == 0 ? null : 1 + m % 9;
        var assurance = (l + 0.5) / 256;
        if (KnownRate.FramesNeeded(rate, correlation, keepers, assurance, burstsOf).Frames is not { } frames)
            return Chance(rate, correlation, keepers, burstsOf, 1000) < assurance;
        return Chance(rate, correlation, keepers, burstsOf, frames) >= assurance - 1e-12
            && (frames == keepers || Chance(rate, correlation, keepers, burstsOf, frames - 1) < assurance);
    }

    [Property(Replay = "(20250131,7)", MaxTest = 200)]
    public bool Bursts_of_one_frame_are_independent_frames(byte r, bool mirror, byte c, byte k, byte l)
    {
        var (rate, assurance) = (Share(r, mirror), (l + 0.5) / 256);
        var bursts = KnownRate.FramesNeeded(rate, Share(c, false), 1 + k, assurance, burstsOf: 1);
        var independent = KnownRate.FramesNeeded(rate, 0, 1 + k, assurance);
        return bursts.Frames == independent.Frames && bursts.Assurance == independent.Assurance && bursts.Bursts.All(size => size == 1);
    }

    [Property(Replay = "(20250131,7)", MaxTest = 200)]
    public bool One_burst_as_large_as_the_shoot_is_no_split_at_all(byte r, bool mirror, byte c, byte k, byte n)
    {
        var (rate, correlation, frames) = (Share(r, mirror), Share(c, false), 1 + n % 60);
        return Chance(rate, correlation, 1 + k % 12, frames, frames) == Chance(rate, correlation, 1 + k % 12, null, frames);
    }

    [Property(Replay = "(20250131,7)", MaxTest = 200)]
    public bool Vanishing_correlation_gives_independent_frames(byte r, bool mirror, byte k, byte n, byte vanishing)
    {
        var (rate, frames, keepers) = (Share(r, mirror), 1 + 4 * n, 1 + k % 40);
        var correlation = Math.Pow(10, -14 - vanishing / 10.0);
        return Math.Abs(Chance(rate, correlation, keepers, null, frames) - Chance(rate, 0, keepers, null, frames)) < 1e-8
            && Math.Abs(Chance(rate, correlation, keepers, 6, frames) - Chance(rate, 0, keepers, null, frames)) < 1e-8;
    }

    [Property(Replay = "(20250131,7)", MaxTest = 100)]
    public bool Adding_bursts_of_independent_frames_is_one_binomial_count(byte p, byte m, byte n)
    {
        var (rate, one, other) = ((p + 0.5) / 256, 1 + m % 20, 1 + n % 20);
        var sum = new double[one + other + 1];
        IndependentCounts.Add(Law(one, rate), Law(other, rate), sum);
        return Law(one + other, rate).Zip(sum).All(pair => Math.Abs(pair.First - pair.Second) < 1e-14);
    }

    [Fact]
    public void More_shared_luck_asks_for_more_frames_and_a_fresh_grip_for_fewer()
    {
        int[] alone =
        [
            .. new[] { 0, 0.05, 0.1, 0.2 }.Select(correlation => KnownRate.FramesNeeded(0.2, correlation, 1, 0.95).Frames!.Value),
        ];
        Assert.Equal(alone.Order(), alone);
        int[] grips = [.. new[] { 1, 2, 6, 33 }.Select(size => KnownRate.FramesNeeded(0.2, 0.1, 1, 0.95, size).Frames!.Value)];
        Assert.Equal(grips.Order(), grips);
    }

    private static double[] Law(int frames, double rate) =>
        [.. Enumerable.Range(0, frames + 1).Select(j => Math.Exp(Binomial.LogMass(j, frames, rate, 1 - rate)))];
}
