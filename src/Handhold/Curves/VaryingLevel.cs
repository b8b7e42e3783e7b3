using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies, as a posterior sees it.</summary>
public sealed class VaryingLevel : FittedLevel
{
    private readonly Lazy<ImmutableArray<TermInStops>> _inStops;
    private readonly HalfPointMixture _halfKeeper;
    private readonly double _level;

    internal VaryingLevel(
        ImmutableArray<string> path,
        int frames,
        ImmutableArray<ParameterSummary> effects,
        double borrowed,
        Lazy<ImmutableArray<TermInStops>> inStops,
        HalfPointMixture halfKeeper,
        double level
    )
        : base(path, frames, borrowed) => (Effects, _inStops, _halfKeeper, _level) = (effects, inStops, halfKeeper, level);

    /// <summary>What it adds, those that vary: to <c>tau0</c>, stops, to <c>log2b</c>, the base-two logarithm of the steepness, and to effects of terms.</summary>
    public ImmutableArray<ParameterSummary> Effects { get; }

    /// <inheritdoc />
    public override ImmutableArray<TermInStops> InStops => _inStops.Value;

    /// <inheritdoc />
    public override ShutterSpeed? HalfKeeperExposure =>
        _halfKeeper.Quantile(0.5) is var median && double.IsFinite(median) ? ShutterSpeed.FromLog2Seconds(median) : null;

    /// <inheritdoc />
    public override ExposureSet HalfKeeperSet => _halfKeeper.Set(_level);
}
