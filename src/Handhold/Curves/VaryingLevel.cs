using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies, as a posterior sees it: a photographer, a setup.</summary>
public sealed class VaryingLevel
{
    private readonly HalfPointMixture _halfKeeper;
    private readonly double _level;

    internal VaryingLevel(
        ImmutableArray<string> path,
        int frames,
        ImmutableArray<ParameterSummary> effects,
        double borrowed,
        HalfPointMixture halfKeeper,
        double level
    ) => (Path, Frames, Effects, Borrowed, _halfKeeper, _level) = (path, frames, effects, borrowed, halfKeeper, level);

    /// <summary>Its label.</summary>
    public string Label => Path[^1];

    /// <summary>The labels that its label belongs to, joined by a middle dot; null where it stands by itself.</summary>
    public string? Parent => Path.Length == 1 ? null : string.Join(" · ", Path.Take(Path.Length - 1));

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>What it adds, those that vary: to <c>tau0</c>, stops, and to <c>log2b</c>, the base-two logarithm of the steepness.</summary>
    public ImmutableArray<ParameterSummary> Effects { get; }

    /// <summary>Share of the variance between levels that its own frames leave open, 0 to 1, all else given: how much is borrowed from the others. 1: they say nothing.</summary>
    public double Borrowed { get; }

    /// <summary>Its half-keeper exposure on another day, at the curve's <see cref="KeeperCurve.ReferenceConditions"/>, with the levels it lies within, all else typical; null where half is probably out of reach.</summary>
    public ShutterSpeed? HalfKeeperExposure =>
        _halfKeeper.Quantile(0.5) is var median && double.IsFinite(median) ? ShutterSpeed.FromLog2Seconds(median) : null;

    /// <summary>Equal-tailed interval of that exposure, log2 seconds. Computed when asked.</summary>
    public ExposureSet HalfKeeperSet => _halfKeeper.Set(_level);

    /// <summary>The labels of its path, the outermost first.</summary>
    internal ImmutableArray<string> Path { get; }

    /// <summary>The label, after those it belongs to.</summary>
    public override string ToString() => string.Join(" · ", Path);
}
