using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies, as the likelihood sees it.</summary>
public sealed class GroupLevel : FittedLevel
{
    private readonly Lazy<GroupedLaw> _law;
    private readonly double _level;

    internal GroupLevel(
        ImmutableArray<string> path,
        ImmutableArray<SpeedCount> speeds,
        ImmutableArray<GroupEffect> effects,
        double borrowed,
        Lazy<GroupedLaw> law,
        double level
    )
        : base(path, speeds.Sum(s => s.Frames), borrowed) => (Speeds, Effects, _law, _level) = (speeds, effects, law, level);

    /// <summary>Its counts at each speed, fastest first.</summary>
    public ImmutableArray<SpeedCount> Speeds { get; }

    /// <summary>What it adds to the coefficients.</summary>
    public ImmutableArray<GroupEffect> Effects { get; }

    /// <inheritdoc />
    public override ImmutableArray<TermInStops> InStops => [.. Effects.Select(e => e.InStops).OfType<TermInStops>()];

    /// <inheritdoc />
    public override ShutterSpeed? HalfKeeperExposure =>
        _law.Value.Exposure(0.5) is { } exposure ? ShutterSpeed.FromLog2Seconds(exposure) : null;

    /// <inheritdoc />
    public override ExposureSet HalfKeeperSet => _law.Value.Set(0.5, _level, IntervalMethod.Fieller);

    /// <summary>The rate along exposures from <paramref name="fastest"/> to <paramref name="slowest"/>, for drawing, where its half-keeper exposure is told of.</summary>
    public CurveBand Band(ShutterSpeed fastest, ShutterSpeed slowest, int points = 81) =>
        CurveBand.Pointwise(_law.Value, _level, fastest.Log2Seconds, slowest.Log2Seconds, Math.Max(2, points));
}
