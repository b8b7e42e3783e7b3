using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The keeper rate of a day and of a burst, as the posterior sees them.</summary>
internal sealed class RateLaw(ImmutableArray<CurveAtom> atoms)
{
    private const int BurstNodes = 11;
    private const double BinWidth = 0.05; // logits
    private const double LargestLogit = 16;

    internal ImmutableArray<CurveAtom> Atoms { get; } = atoms;

    private static GaussRule Burst { get; } = GaussRule.Hermite(BurstNodes);

    /// <summary>Keeper rate of an atom's frames shot <paramref name="distance"/> stops faster than the day's half point, burst luck averaged out.</summary>
    internal static double Rate(CurveAtom atom, double distance)
    {
        if (atom.BurstSd == 0)
            return atom.Floor + (atom.Ceiling - atom.Floor) * Elementary.Logistic(atom.Steepness * distance).Mu;
        var sum = 0.0;
        for (var i = 0; i < BurstNodes; i++)
            sum += Burst.Weights[i] * Elementary.Logistic(atom.Steepness * (distance + atom.BurstSd * Burst.Nodes[i])).Mu;
        return atom.Floor + (atom.Ceiling - atom.Floor) * sum;
    }

    /// <summary>Stops between the day's half point and the exposure that has the rate: infinite at or above the ceiling, minus infinite at or below the floor.</summary>
    internal static double Distance(CurveAtom atom, double rate)
    {
        var share = (rate - atom.Floor) / (atom.Ceiling - atom.Floor);
        if (share >= 1)
            return double.PositiveInfinity;
        if (share <= 0)
            return double.NegativeInfinity;
        var bare = Elementary.Logit(share) / atom.Steepness;
        if (atom.BurstSd == 0 || bare == 0)
            return bare;
        var wide = bare * Math.Sqrt(1 + atom.Steepness * atom.Steepness * atom.BurstSd * atom.BurstSd) + Math.Sign(bare) * 1e-9;
        var (low, high) = bare > 0 ? (bare, wide) : (wide, bare);
        while (Rate(atom, low) > rate)
            low -= 0.5;
        while (Rate(atom, high) < rate)
            high += 0.5;
        var at = 0.7 * bare + 0.3 * wide;
        var before = (At: bare, Miss: Rate(atom, bare) - rate);
        for (var i = 0; i < 60; i++)
        {
            var miss = Rate(atom, at) - rate;
            if (miss < 0)
                low = at;
            else
                high = at;
            if (Math.Abs(miss) < 1e-14 || high - low < 1e-13 * (1 + Math.Abs(at)))
                break;
            var secant = at - miss * (at - before.At) / (miss - before.Miss);
            before = (at, miss);
            at = secant > low && secant < high ? secant : (low + high) / 2;
        }

        return at;
    }

    /// <summary>P(rate of a day at an exposure, log2 seconds, is at most <paramref name="rate"/>).</summary>
    internal double RateCdf(double exposure, double rate)
    {
        var sum = 0.0;
        foreach (var atom in Atoms)
            sum += atom.Weight * Below(atom, exposure + Distance(atom, rate));
        return sum;
    }

    /// <summary>The exposures, log2 seconds, at which a day has the rate; minus infinity where never.</summary>
    internal HalfPointMixture ExposureFor(double rate) => new(Atoms, [.. Atoms.Select(a => -Distance(a, rate))]);

    /// <summary>Mean rate: the chance that one frame is a keeper.</summary>
    internal double MeanRate(double exposure)
    {
        var sum = 0.0;
        foreach (var atom in Atoms)
        {
            var part = 0.0;
            var density = atom.HalfPoint.Density;
            for (var i = 0; i < density.Length; i++)
                part += density[i] * Rate(atom, atom.HalfPoint.Position(i) - exposure);
            sum += atom.Weight * part * atom.HalfPoint.Step;
        }

        return sum;
    }

    /// <summary>The rate below which a day's rate lies with probability <paramref name="p"/>.</summary>
    internal double RateQuantile(double exposure, double p)
    {
        var (low, high) = (-30.0, 30.0);
        for (var i = 0; i < 26; i++)
        {
            var middle = (low + high) / 2;
            if (RateCdf(exposure, Elementary.Logistic(middle).Mu) < p)
                low = middle;
            else
                high = middle;
        }

        return Elementary.Logistic((low + high) / 2).Mu;
    }

    /// <summary>The distribution of one burst's keeper probability at an exposure, day and burst luck included, in narrow bins.</summary>
    internal BurstRates BurstRates(double exposure)
    {
        var bins = (int)Math.Round(2 * LargestLogit / BinWidth);
        var below = new double[bins + 1];
        var inBurst = Atoms.Select(a => a with { HalfPoint = a.HalfPoint.Shifted(a.BurstSd), BurstSd = 0 }).ToArray();
        for (var i = 1; i < bins; i++)
        {
            var rate = Elementary.Logistic(-LargestLogit + i * BinWidth).Mu;
            foreach (var atom in inBurst)
                below[i] += atom.Weight * Below(atom, exposure + Distance(atom, rate));
        }

        below[bins] = 1;
        var (rates, misses, masses) = (new double[bins], new double[bins], new double[bins]);
        for (var i = 0; i < bins; i++)
        {
            (rates[i], misses[i]) = Elementary.Logistic(-LargestLogit + (i + 0.5) * BinWidth);
            masses[i] = Math.Max(0, below[i + 1] - below[i]);
        }

        return new(rates, misses, masses);
    }

    private static double Below(CurveAtom atom, double halfPoint) =>
        double.IsPositiveInfinity(halfPoint) ? 1
        : double.IsNegativeInfinity(halfPoint) ? 0
        : atom.HalfPoint.Cdf(halfPoint);
}
