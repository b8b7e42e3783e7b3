using Handhold.Kernels;

namespace Handhold.Prediction;

/// <summary>The smallest number of frames that brings the keepers home often enough, when rate and correlation are known.</summary>
/// <remarks>
/// Frames come in bursts that share nothing; within a burst they are beta-binomial, a = μ(1-ρ)/ρ and b = (1-μ)(1-ρ)/ρ, or independent when ρ = 0.
/// The chance of at least k keepers never falls with another frame: the first n frames of n + 1, split into bursts in the same order, have
/// the law of a shoot of n (frames of a burst are exchangeable, so a longer burst looks the same in its first frames), and their keepers
/// remain. So the smallest number that suffices splits the numbers into those that fail and those that hold, and halving finds it.
/// </remarks>
internal sealed class FrameSearch
{
    // Below this the correlation moves no chance by more than 1e-12 within a million frames, but would overflow the shapes.
    private const double NoCorrelation = 1e-18;

    private readonly (double Keep, double Miss) _rate;
    private readonly (double A, double B)? _shapes;
    private readonly int _keepers;
    private readonly int _budget;
    private readonly int _burst;
    private readonly CancellationToken _cancellation;

    internal FrameSearch(double rate, double correlation, int keepers, int? burstsOf, int budget, CancellationToken cancellation)
    {
        (_rate, _keepers, _budget, _cancellation) = ((rate, 1 - rate), keepers, budget, cancellation);
        // Bursts of one frame share nothing either.
        if (correlation >= NoCorrelation && burstsOf != 1)
            _shapes = BetaBinomial.Shapes(rate, 1 - rate, correlation);
        _burst = _shapes is null ? budget : Math.Min(burstsOf ?? budget, budget);
    }

    /// <summary>The smallest number within the budget with a chance of fewer keepers of at most <paramref name="doubt"/>, or null; and that chance, there or at the budget.</summary>
    internal (int? Frames, double Fewer) Smallest(double doubt)
    {
        var (bursts, shot) = FullBurstsThatFail(doubt);
        var fails = Math.Max(0, _keepers - 1 - bursts * _burst);
        var holds = Math.Min(_burst, _budget - bursts * _burst);
        var fewer = FewerAfter(shot, holds);
        if (fewer > doubt)
            return (null, fewer);
        while (holds - fails > 1)
        {
            var middle = fails + (holds - fails) / 2;
            var there = FewerAfter(shot, middle);
            if (there <= doubt)
                (holds, fewer) = (middle, there);
            else
                fails = middle;
        }
        return (bursts * _burst + holds, fewer);
    }

    // The most full bursts that fail and leave room for another frame, and the law of their keepers below the number wanted:
    // laws of 1, 2, 4, … bursts, then as many of them as still fail, the largest first.
    private (int Bursts, double[] Law) FullBurstsThatFail(double doubt)
    {
        var room = (_budget - 1) / _burst;
        var doublings = new List<double[]>();
        for (var (count, law) = (1, room > 0 ? OneBurst(_burst) : []); count <= room; count *= 2)
        {
            if (law.Sum() <= doubt && law.Length == _keepers)
                break;
            doublings.Add(law);
            law = Both(law, law);
        }
        var (bursts, shot) = (0, new[] { 1.0 });
        for (var i = doublings.Count - 1; i >= 0; i--)
        {
            if (bursts + (1 << i) > room)
                continue;
            var longer = Both(shot, doublings[i]);
            if (longer.Length == _keepers && longer.Sum() <= doubt)
                continue;
            (bursts, shot) = (bursts + (1 << i), longer);
        }
        return (bursts, shot);
    }

    private double FewerAfter(double[] shot, int frames)
    {
        _cancellation.ThrowIfCancellationRequested();
        if (shot is [1.0])
            return _shapes is var (a, b)
                ? BetaBinomial.Tails(_keepers, frames, a, b).Fewer
                : Binomial.Tails(_keepers, frames, _rate.Keep, _rate.Miss).Fewer;
        return Math.Min(1, Both(shot, OneBurst(frames)).Sum());
    }

    // Chances of 0, 1, … keepers in one burst, below the number wanted.
    private double[] OneBurst(int frames)
    {
        var (law, (a, b)) = (new double[Math.Min(_keepers, frames + 1)], _shapes!.Value);
        for (var j = 0; j < law.Length; j++)
            law[j] = Math.Exp(BetaBinomial.LogMass(j, frames, a, b));
        return law;
    }

    private double[] Both(double[] some, double[] others)
    {
        _cancellation.ThrowIfCancellationRequested();
        var sum = new double[Math.Min(_keepers, some.Length + others.Length - 1)];
        IndependentCounts.Add(some, others, sum);
        return sum;
    }
}
