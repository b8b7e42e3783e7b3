using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies: a photographer, a setup.</summary>
public sealed class GroupLevel
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
    ) => (Path, Speeds, Effects, Borrowed, _law, _level) = (path, speeds, effects, borrowed, law, level);

    /// <summary>Its label.</summary>
    public string Label => Path[^1];

    /// <summary>The labels that its label belongs to, joined by a middle dot; null where it stands by itself.</summary>
    public string? Parent => Path.Length == 1 ? null : string.Join(" · ", Path.Take(Path.Length - 1));

    /// <summary>Its counts at each speed, fastest first.</summary>
    public ImmutableArray<SpeedCount> Speeds { get; }

    /// <summary>Frames judged.</summary>
    public int Frames => Speeds.Sum(s => s.Frames);

    /// <summary>What it adds to the coefficients.</summary>
    public ImmutableArray<GroupEffect> Effects { get; }

    /// <summary>Share of the variance between levels that its own frames leave open, 0 to 1, at the centre of the exposures: how much is borrowed from the others. 1: they say nothing.</summary>
    public double Borrowed { get; }

    /// <summary>Its half-keeper exposure at the curve's <see cref="KeeperCurve.ReferenceConditions"/>, with the levels it lies within, all else typical; null where its line has none.</summary>
    public ShutterSpeed? HalfKeeperExposure => _law.Value.Exposure(0.5) is { } exposure ? ShutterSpeed.FromLog2Seconds(exposure) : null;

    /// <summary>The exposures that its frames, and what it borrows, do not exclude as half-keeper exposure; log2 seconds. Computed when asked.</summary>
    public ExposureSet HalfKeeperSet => _law.Value.Set(0.5, _level, IntervalMethod.Fieller);

    /// <summary>The rate along exposures from <paramref name="fastest"/> to <paramref name="slowest"/>, for drawing, where its half-keeper exposure is told of.</summary>
    public CurveBand Band(ShutterSpeed fastest, ShutterSpeed slowest, int points = 81) =>
        CurveBand.Pointwise(_law.Value, _level, fastest.Log2Seconds, slowest.Log2Seconds, Math.Max(2, points));

    /// <summary>The labels of its path, the outermost first.</summary>
    internal ImmutableArray<string> Path { get; }

    /// <summary>The label, after those it belongs to.</summary>
    public override string ToString() => string.Join(" · ", Path);
}
