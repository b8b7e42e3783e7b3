using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>One level of a column that varies, by whichever estimator: a photographer, a setup.</summary>
public abstract class FittedLevel
{
    private readonly double _level;

    private protected FittedLevel(ImmutableArray<string> path, ImmutableArray<SpeedCount> speeds, double borrowed, double level) =>
        (Path, Speeds, Borrowed, _level) = (path, speeds, borrowed, level);

    /// <summary>Its label.</summary>
    public string Label => Path[^1];

    /// <summary>The labels that its label belongs to, joined by a middle dot; null where it stands by itself.</summary>
    public string? Parent => Path.Length == 1 ? null : string.Join(" · ", Path.Take(Path.Length - 1));

    /// <summary>Frames judged.</summary>
    public int Frames => Speeds.Sum(s => s.Frames);

    /// <summary>Its counts at each speed, fastest first.</summary>
    public ImmutableArray<SpeedCount> Speeds { get; }

    /// <summary>Share of the variance between levels that its own frames leave open, 0 to 1, all else given; under the likelihood at the centre of the exposures, of a term the mean over its columns. How much is borrowed from the others; 1: they say nothing.</summary>
    public double Borrowed { get; }

    /// <summary>What a term that varies costs or buys at this level, in stops; empty for height and slope, and where it depends on the rate. Computed when asked.</summary>
    public abstract ImmutableArray<TermInStops> InStops { get; }

    /// <summary>Its half-keeper exposure at the curve's <see cref="KeeperCurve.ReferenceConditions"/>, with the levels it lies within, all else typical; a posterior's on another day. Null where half is out of reach, or its line has none.</summary>
    public abstract ShutterSpeed? HalfKeeperExposure { get; }

    /// <summary>The interval of that exposure, log2 seconds: what its frames, and what it borrows, do not exclude; a posterior's equal-tailed. Computed when asked.</summary>
    public ExposureSet HalfKeeperSet => Set(_level);

    /// <summary>The labels of its path, the outermost first.</summary>
    internal ImmutableArray<string> Path { get; }

    /// <summary>The rate along exposures from <paramref name="fastest"/> to <paramref name="slowest"/>, for drawing, where its half-keeper exposure is told of.</summary>
    public CurveBand Band(ShutterSpeed fastest, ShutterSpeed slowest, int points = 81) =>
        CurveBand.Of(Law(), _level, fastest.Log2Seconds, slowest.Log2Seconds, Math.Max(2, points));

    private protected abstract ExposureSet Set(double level);

    private protected abstract IRateLaw Law();

    /// <summary>The label, after those it belongs to.</summary>
    public override string ToString() => string.Join(" · ", Path);
}
