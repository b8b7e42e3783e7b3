using System.Numerics;
using System.Runtime.InteropServices;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The days that a part of a posterior allows for, and the keepers of a burst on each, its luck averaged over.</summary>
/// <remarks>
/// Days and lucks by trapezoid sums. Along a logit the law of n frames is analytic up to ±iπ and about as sharp as a normal density of sd 2/√n, so steps of 1.1/√n,
/// at most 0.45, leave errors below 1e-9; steps of 0.9 sds do so of the luck's own density. Lucks lie on the grid of the days, so that a burst's law is found once
/// at each point of it. Luck that is narrow beside that law takes a Gauss rule instead. Checked against every way the keepers can fall.
/// </remarks>
internal sealed class DaysOfBursts
{
    private const double Coarsest = 0.45; // logits
    private const double Sharp = 1.1;
    private const double LuckStep = 0.9; // sds
    private const double LuckReach = 6.3; // sds
    private const double Narrow = 0.3; // sds of the law of n frames
    private const double Negligible = 1e-15;

    private readonly CurveAtom _atom;
    private readonly double _start;
    private readonly double _step;
    private readonly ReadOnlyMemory<double> _masses;
    private readonly (double Shift, double Share)[] _luck;
    private readonly int _stride; // steps of days from luck to luck; 0 where lucks do not lie on the grid

    /// <summary>Days at one exposure, so close that the count of so many frames is resolved.</summary>
    internal DaysOfBursts(CurveAtom atom, double exposure, int frames)
    {
        _atom = atom;
        var (sd, coarsest) = (atom.BurstSd, Math.Min(Coarsest, Sharp / Math.Sqrt(frames)) / atom.Steepness);
        var isNarrow = sd * atom.Steepness * Math.Sqrt(frames) / 2 < Narrow;
        var (start, step, masses) = atom.HalfPoint.Nodes(isNarrow ? coarsest : Math.Min(coarsest, LuckStep * sd));
        var (first, last) = (0, masses.Length);
        while (first < last && atom.Weight * masses.Span[first] <= Negligible)
            first++;
        while (first < last && atom.Weight * masses.Span[last - 1] <= Negligible)
            last--;
        (_start, _step, _masses) = (start + first * step - exposure, step, masses[first..last]);
        _stride = isNarrow ? 0 : Math.Max(1, (int)(Math.Min(coarsest, LuckStep * sd) / step));
        _luck =
            sd == 0 ? [(0, 1)]
            : isNarrow ? [.. Few.Nodes.Zip(Few.Weights, (node, weight) => (sd * node, weight))]
            : Trapezoid(_stride * step / sd);
    }

    private static GaussRule Few { get; } = GaussRule.Hermite(11);

    /// <summary>Number of days.</summary>
    internal int Count => _masses.Length;

    /// <summary>The probability of a day.</summary>
    internal double Weight(int day) => _atom.Weight * _masses.Span[day];

    /// <summary>Chances of 0, 1, … below so many keepers in a burst, day after day.</summary>
    internal double[] Counts(int frames, int below)
    {
        var counts = new double[Count * below];
        if (_stride == 0)
        {
            for (var day = 0; day < Count; day++)
                foreach (var (shift, share) in _luck)
                    Add(counts.AsSpan(day * below, below), share, _start + day * _step + shift, frames);
            return counts;
        }

        var reach = _luck.Length / 2 * _stride;
        var gripped = new double[(Count + 2 * reach) * below];
        for (var i = 0; i < Count + 2 * reach; i++)
            Add(gripped.AsSpan(i * below, below), 1, _start + (i - reach) * _step, frames);
        for (var luck = 0; luck < _luck.Length; luck++)
            AddScaled(_luck[luck].Share, gripped.AsSpan(luck * _stride * below, counts.Length), counts);
        return counts;
    }

    private static void AddScaled(double share, ReadOnlySpan<double> laws, Span<double> sum)
    {
        var wide = MemoryMarshal.Cast<double, Vector<double>>(laws);
        var wideSum = MemoryMarshal.Cast<double, Vector<double>>(sum);
        for (var i = 0; i < wide.Length; i++)
            wideSum[i] += share * wide[i];
        for (var i = wide.Length * Vector<double>.Count; i < sum.Length; i++)
            sum[i] += share * laws[i];
    }

    private static (double Shift, double Share)[] Trapezoid(double step)
    {
        var half = (int)Math.Ceiling(LuckReach / step);
        double[] densities = [.. Enumerable.Range(-half, 2 * half + 1).Select(i => Normal.Density(i * step))];
        var total = densities.Sum();
        return Array.ConvertAll(densities, d => (0.0, d / total));
    }

    /// <summary>Adds a share of the law of a burst whose frames lie so far from the half point.</summary>
    private void Add(Span<double> counts, double share, double distance, int frames)
    {
        var (keep, miss) = Chances(distance);
        if (_atom.FirstShift == 0)
        {
            Add(counts, 0, share, frames, keep, miss);
            return;
        }

        var (first, rest) = Chances(distance + _atom.FirstShift);
        Add(counts, 0, share * rest, frames - 1, keep, miss);
        Add(counts, 1, share * first, frames - 1, keep, miss);
    }

    private (double Keep, double Miss) Chances(double distance) =>
        Elementary.Capped(_atom.Steepness * distance, _atom.Ceiling, _atom.Floor);

    /// <summary>Adds the masses of a binomial count that starts from <paramref name="from"/>.</summary>
    private static void Add(Span<double> counts, int from, double share, int frames, double keep, double miss)
    {
        if (miss < 1e-300 / share)
        {
            if (from + frames < counts.Length)
                counts[from + frames] += share;
            return;
        }

        var mass = share * Elementary.Power(miss, frames);
        for (var j = 0; from + j < counts.Length && j <= frames; j++)
        {
            counts[from + j] += mass;
            mass *= keep * (frames - j) / (miss * (j + 1));
        }
    }
}
