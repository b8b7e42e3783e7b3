using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies, as a posterior sees it.</summary>
public sealed class VaryingLevel : FittedLevel
{
    private readonly Lazy<ImmutableArray<Status>> _statuses;
    private readonly Lazy<ImmutableArray<TermInStops>> _inStops;
    private readonly double _median;
    private readonly Func<HalfPointMixture> _halfKeeper;
    private readonly Func<IRateLaw> _law;

    internal VaryingLevel(
        ImmutableArray<string> path,
        ImmutableArray<SpeedCount> speeds,
        ImmutableArray<ParameterSummary> effects,
        Sampling sampling,
        Lazy<ImmutableArray<Status>> statuses,
        double borrowed,
        Lazy<ImmutableArray<TermInStops>> inStops,
        Func<HalfPointMixture> halfKeeper,
        Func<IRateLaw> law,
        double level
    )
        : base(path, speeds, borrowed, level)
    {
        (Effects, Sampling, _statuses, _inStops, _halfKeeper, _law) = (effects, sampling, statuses, inStops, halfKeeper, law);
        _median = halfKeeper().Quantile(0.5);
    }

    /// <summary>What it adds, those that vary: to <c>tau0</c>, stops, to <c>log2b</c>, the base-two logarithm of the steepness, and to effects of terms.</summary>
    public ImmutableArray<ParameterSummary> Effects { get; }

    /// <summary>How well the weighted points stand for it, and for the levels that it lies within.</summary>
    public Sampling Sampling { get; }

    /// <summary>What the reader should know of it: <c>approximate</c> where its points are few, or its effects move with more quadrature nodes. Computed when first asked.</summary>
    public ImmutableArray<Status> Statuses => _statuses.Value;

    /// <inheritdoc />
    public override ImmutableArray<TermInStops> InStops => _inStops.Value;

    /// <inheritdoc />
    public override ShutterSpeed? HalfKeeperExposure => double.IsFinite(_median) ? ShutterSpeed.FromLog2Seconds(_median) : null;

    private protected override ExposureSet Set(double level) => _halfKeeper().Set(level);

    private protected override IRateLaw Law() => _law();
}
