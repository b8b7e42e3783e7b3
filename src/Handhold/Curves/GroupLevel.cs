using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies, as the likelihood sees it.</summary>
public sealed class GroupLevel : FittedLevel
{
    private readonly Lazy<GroupedLaw> _law;

    internal GroupLevel(
        ImmutableArray<string> path,
        ImmutableArray<SpeedCount> speeds,
        ImmutableArray<GroupEffect> effects,
        double borrowed,
        Lazy<GroupedLaw> law,
        double level
    )
        : base(path, speeds, borrowed, level) => (Effects, _law) = (effects, law);

    /// <summary>What it adds to the coefficients.</summary>
    public ImmutableArray<GroupEffect> Effects { get; }

    /// <inheritdoc />
    public override ImmutableArray<TermInStops> InStops => [.. Effects.Select(e => e.InStops).OfType<TermInStops>()];

    /// <inheritdoc />
    public override ShutterSpeed? HalfKeeperExposure =>
        _law.Value.Exposure(0.5) is { } exposure ? ShutterSpeed.FromLog2Seconds(exposure) : null;

    private protected override ExposureSet Set(double level) => _law.Value.Set(0.5, level, IntervalMethod.Fieller);

    private protected override IRateLaw Law() => _law.Value;
}
