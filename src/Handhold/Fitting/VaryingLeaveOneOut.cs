using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>What the other speeds lead to expect of the keepers at each speed, where levels vary; each computed when first asked.</summary>
/// <remarks>As <see cref="LeaveOneOut"/>: the posterior of the parameters without a speed is sampled around its top, levels integrated out; at every point the count there has the law of <see cref="VaryingCounts"/>.</remarks>
internal sealed class VaryingLeaveOneOut
{
    private const int Points = 128;
    private const double StandsOut = 0.1;
    private const double Negligible = 1e-6;
    private readonly VaryingSample _sample;
    private readonly Seed _seed;
    private readonly ImmutableArray<(SpeedCount Seen, Lazy<ExpectedCount> Count)> _speeds;

    internal VaryingLeaveOneOut(KeeperModel model, CurveData data, VaryingSample sample)
    {
        (_sample, _seed) = (sample, Seed.From(model.Seed));
        _speeds =
            data.Speeds.Length == 1 ? [] : [.. data.Speeds.Select((speed, i) => (speed, new Lazy<ExpectedCount>(() => Without(speed, i))))];
    }

    /// <summary>Speeds that can be left out.</summary>
    internal int Count => _speeds.Length;

    internal ImmutableArray<ExpectedCount> All => [.. _speeds.Select(s => s.Count.Value)];

    /// <summary>Only those that stand out from the fit which has seen them too: what draws a fit to itself stands out more when it is left out.</summary>
    internal ImmutableArray<ExpectedCount> Suspicious => [.. _speeds.Where(s => IsSuspicious(s.Seen)).Select(s => s.Count.Value)];

    private static Func<TermCell, bool> At(SpeedCount speed)
    {
        var at = speed.Exposure.Log2Seconds;
        return cell => cell.Exposure == at;
    }

    private bool IsSuspicious(SpeedCount speed)
    {
        var density = _sample.Density;
        var law = new VaryingCounts(density, density.Frames.Where(At(speed))).AtTop(density.Read(_sample.Top.AsSpan()));
        var (fewer, exactly, more) = law.Around(speed.Keepers);
        return new ExpectedCount(speed, law.Mean / speed.Frames, fewer, exactly, more).Chance < StandsOut;
    }

    private ExpectedCount Without(SpeedCount speed, int index)
    {
        var (all, isHeld) = (_sample.Density, At(speed));
        var others = all.Of(all.Frames.Where(c => !isHeld(c)));
        var peak = Peak.Of(others.Rough, [.. _sample.Top], VaryingSample.Step);
        others = others.From(peak.Top);
        var streams = (index + 1L) << 32;
        var sample = WeightedSample.Of(others.Log, others.Log, peak, 0, Points, _seed.Stream(streams).Bits, default);
        VaryingCounts counts = new(others, all.Frames.Where(isHeld));
        var laws = new (double Mean, double Fewer, double Exactly, double More)[Points];
        Parallel.For(
            0,
            Points,
            k =>
            {
                if (sample.Weights[k] < Negligible)
                    return;
                var law = counts.Of(others.Read(sample.Point(k)), _seed.Stream(streams + 1 + k));
                var (fewer, exactly, more) = law.Around(speed.Keepers);
                laws[k] = (law.Mean, fewer, exactly, more);
            }
        );
        return new(speed, Sum(l => l.Mean) / speed.Frames, Sum(l => l.Fewer), Sum(l => l.Exactly), Sum(l => l.More));

        double Sum(Func<(double Mean, double Fewer, double Exactly, double More), double> of) =>
            laws.Select((law, k) => sample.Weights[k] * of(law)).Sum();
    }
}
