using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>The keeper rate of a day, and of a burst, as the posterior sees them.</summary>
internal sealed class RateLaw : IExposureLaw
{
    private const double BinWidth = 0.05; // logits
    private const double LargestLogit = 20;
    private const double Unlikely = 1e-9;
    private const double NodeWidth = 0.3; // logits
    private const int EnoughToDraw = 1024;
    private const int Remembered = 8;
    private readonly bool _points;
    private readonly AsymptoteCells _ceilings;
    private readonly AsymptoteCells _floors;
    private readonly Dictionary<double, BurstCurve> _bursts;
    private readonly Lazy<ImmutableArray<CurveAtom>> _inBurst;
    private readonly Recent<(double Exposure, double P), double> _quantiles; // one speed is asked for many plans
    private readonly Recent<double, BurstRates> _burstRates;

    /// <param name="atoms">The posterior's parts.</param>
    /// <param name="ceilings">Ceilings between the nodes.</param>
    /// <param name="floors">Floors between the nodes.</param>
    internal RateLaw(ImmutableArray<CurveAtom> atoms, AsymptoteCells ceilings, AsymptoteCells floors)
    {
        (Atoms, _ceilings, _floors) = (atoms, ceilings, floors);
        _points = atoms.All(a => a.HalfPoint is NormalHalfPoint);
        (_quantiles, _burstRates) = (
            new(Remembered, Quantile),
            new(Remembered, exposure => _points ? Gathered(exposure) : Differences(exposure))
        );
        _bursts = atoms.Select(Luck).Distinct().ToDictionary(s => s, s => new BurstCurve(s));
        _inBurst = new(() =>
            [
                .. _points
                    ? atoms.Select(a => InBurst([a]))
                    : atoms.GroupBy(a => (a.Steepness, a.Ceiling, a.Floor)).Select(g => InBurst([.. g])),
            ]
        );
    }

    internal ImmutableArray<CurveAtom> Atoms { get; }

    /// <summary>Good enough for a drawing: of very many points the first ones, which are spread as evenly as all.</summary>
    internal RateLaw Coarse => _points && Atoms.Length > EnoughToDraw ? new(Atoms[..EnoughToDraw], _ceilings, _floors) : this;

    /// <inheritdoc />
    public HalfPointMixture ExposureFor(double rate) => new([.. Parts(rate)]);

    /// <summary>P(rate of a day at an exposure, log2 seconds, is at most <paramref name="rate"/>): then and only then the exposure for that rate is no longer than this one.</summary>
    public double RateCdf(double exposure, double rate)
    {
        var (sum, total) = (0.0, 0.0);
        foreach (var part in Parts(rate))
            (sum, total) = (sum + part.Weight * part.Cdf(exposure), total + part.Weight);
        return sum / total;
    }

    /// <summary>The rate below which a day's rate lies with probability <paramref name="p"/>.</summary>
    public double RateQuantile(double exposure, double p) => _quantiles[(exposure, p)];

    private double Quantile((double Exposure, double P) asked) =>
        Elementary.Logistic(Root.Of(logit => RateCdf(asked.Exposure, Elementary.Logistic(logit).Mu) - asked.P, -30, 30, 1e-9)).Mu;

    /// <summary>Mean rate: the chance that one frame is a keeper.</summary>
    public double MeanRate(double exposure)
    {
        var sum = 0.0;
        foreach (var atom in Atoms)
        {
            var (burst, part) = (_bursts[Luck(atom)], 0.0);
            var (start, step, masses) = atom.HalfPoint.Nodes();
            for (var i = 0; i < masses.Length; i++)
                part += masses.Span[i] * burst.Mean(atom.Steepness * (start + i * step - exposure));
            sum += atom.Weight * (atom.Floor + (atom.Ceiling - atom.Floor) * part);
        }

        return sum;
    }

    /// <summary>The distribution of one burst's keeper probability at an exposure, day and burst luck included, in narrow bins.</summary>
    public IBurstLaw BurstRates(double exposure) => _burstRates[exposure];

    /// <inheritdoc />
    public bool SharesLuck => Atoms.Any(a => a.BurstSd > 0);

    /// <inheritdoc />
    public IBurstsLaw Bursts(double exposure) => new BurstsLaw(this, exposure);

    /// <inheritdoc />
    public double BurstCorrelation(double exposure) => new BurstsLaw(this, exposure).Correlation();

    /// <summary>From the distribution function at the edges of the bins.</summary>
    private BurstRates Differences(double exposure)
    {
        var last = (int)Math.Round(2 * LargestLogit / BinWidth);
        var (rates, misses, masses) = (new List<double>(), new List<double>(), new List<double>());
        var before = 0.0;
        for (var i = FirstLikely(exposure, last); i < last && before < 1 - Unlikely; i++)
        {
            var upTo = i + 1 == last ? 1 : BurstCdf(exposure, i + 1);
            var (rate, miss) = Elementary.Logistic(Logit(i + 0.5));
            rates.Add(rate);
            misses.Add(miss);
            masses.Add(Math.Max(0, upTo - before));
            before = upTo;
        }

        return new([.. rates], [.. misses], [.. masses]);
    }

    /// <summary>From nodes of every part, each put into its bin: for many narrow parts.</summary>
    private BurstRates Gathered(double exposure)
    {
        var bins = (int)Math.Round(2 * LargestLogit / BinWidth);
        var (keep, miss, mass, first) = (new double[bins], new double[bins], new double[bins], new double[bins]);
        foreach (var atom in _inBurst.Value)
        {
            var (start, step, masses) = atom.HalfPoint.Nodes(NodeWidth / atom.Steepness);
            for (var i = 0; i < masses.Length; i++)
            {
                var (distance, weight) = (start + i * step - exposure, atom.Weight * masses.Span[i]);
                var (rate, loss) = Elementary.Capped(atom.Steepness * distance, atom.Ceiling, atom.Floor);
                var bin = (int)Math.Clamp((Math.Log(rate / loss) + LargestLogit) / BinWidth, 0, bins - 1);
                keep[bin] += weight * rate;
                miss[bin] += weight * loss;
                mass[bin] += weight;
                if (atom.FirstShift != 0)
                    rate = Elementary.Capped(atom.Steepness * (distance + atom.FirstShift), atom.Ceiling, atom.Floor).Keep;
                first[bin] += weight * rate;
            }
        }

        int[] used = [.. Enumerable.Range(0, bins).Where(i => mass[i] > 0)];
        return new(
            [.. used.Select(i => keep[i] / mass[i])],
            [.. used.Select(i => miss[i] / mass[i])],
            [.. used.Select(i => mass[i])],
            _inBurst.Value.Any(a => a.FirstShift != 0) ? [.. used.Select(i => first[i] / mass[i])] : null
        );
    }

    private static double Logit(double bin) => bin * BinWidth - LargestLogit;

    /// <summary>Atoms that differ in the luck of a burst only, as one whose half point is that of a burst.</summary>
    private static CurveAtom InBurst(CurveAtom[] atoms) =>
        atoms[0] with
        {
            Weight = atoms.Sum(a => a.Weight),
            BurstSd = 0,
            HalfPoint = atoms is [var only]
                ? only.HalfPoint.Shifted(only.BurstSd)
                : HalfPointDensity.Mixed([.. atoms.Select(a => (a.Weight, (HalfPointDensity)a.HalfPoint.Shifted(a.BurstSd)))]),
        };

    private static double Luck(CurveAtom atom) => atom.Steepness * atom.BurstSd;

    private IEnumerable<MixturePart> Parts(double rate)
    {
        foreach (var atom in Atoms)
        {
            var (ceiling, floor) = (atom.Ceiling, atom.Floor);
            if (_ceilings.Matter(ceiling, 1 - ceiling, rate))
                foreach (var (share, value) in _ceilings.SplitAt(rate, ceiling))
                    yield return Part(atom, share, value, floor);
            else if (_floors.Matter(floor, floor, rate))
                foreach (var (share, value) in _floors.SplitAt(rate, floor))
                    yield return Part(atom, share, ceiling, value);
            else
                yield return Part(atom, 1, ceiling, floor);
        }

        MixturePart Part(CurveAtom atom, double share, double ceiling, double floor) =>
            new(atom.Weight * share, atom.HalfPoint, -Distance(atom, ceiling, floor, rate));
    }

    /// <summary>Stops between the day's half point and the exposure that has the rate: infinite at or above the ceiling, minus infinite at or below the floor.</summary>
    private double Distance(CurveAtom atom, double ceiling, double floor, double rate)
    {
        var share = (rate - floor) / (ceiling - floor);
        return share >= 1 ? double.PositiveInfinity
            : share <= 0 ? double.NegativeInfinity
            : _bursts[Luck(atom)].Inverse(Elementary.Logit(share)) / atom.Steepness;
    }

    /// <summary>P(keeper probability of a burst is at most that of the lower edge of a bin).</summary>
    private double BurstCdf(double exposure, int bin)
    {
        var (rate, sum) = (Elementary.Logistic(Logit(bin)).Mu, 0.0);
        foreach (var atom in _inBurst.Value)
        {
            var share = (rate - atom.Floor) / (atom.Ceiling - atom.Floor);
            if (share >= 1)
                sum += atom.Weight;
            else if (share > 0)
                sum += atom.Weight * atom.HalfPoint.Cdf(exposure + Elementary.Logit(share) / atom.Steepness);
        }

        return sum;
    }

    private int FirstLikely(double exposure, int last)
    {
        var (low, high) = (0, last);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (BurstCdf(exposure, middle) < Unlikely)
                low = middle;
            else
                high = middle;
        }

        return low;
    }
}
