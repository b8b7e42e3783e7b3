using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Counts with a linear predictor each: keepers_i of frames_i at the rate floor + (ceiling - floor) F(offset_i + x_i·b).</summary>
/// <remarks>
/// Rows may be single frames or cells of equal frames: no estimate depends on it; the deviance is against the saturated model of the rows as given, so pool first
/// (<see cref="Pooled"/>). The link's F is taken as it stands: b are its plain coefficients.
/// </remarks>
public sealed partial record BinomialProblem
{
    /// <summary>A problem of plain logistic form; other links, offsets and asymptotes are set beside it.</summary>
    /// <param name="columns">Names of the coefficients; none twice.</param>
    /// <param name="design">Rows × columns, row-major, finite. An intercept is a column of ones like any other.</param>
    /// <param name="frames">Frames of each row, at least 1.</param>
    /// <param name="keepers">Keepers of each row, from 0 to its frames.</param>
    /// <exception cref="ArgumentException">Shapes that do not fit, a name twice, a number out of range; the message names the row and the column.</exception>
    public BinomialProblem(
        ImmutableArray<string> columns,
        ReadOnlyMemory<double> design,
        ReadOnlyMemory<int> frames,
        ReadOnlyMemory<int> keepers
    )
    {
        (Columns, Design, Frames, Keepers) = (columns, design, frames, keepers);
        CheckRows();
    }

    /// <summary>Names of the coefficients.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>Rows × columns, row-major.</summary>
    public ReadOnlyMemory<double> Design { get; }

    /// <summary>Frames of each row.</summary>
    public ReadOnlyMemory<int> Frames { get; }

    /// <summary>Keepers of each row.</summary>
    public ReadOnlyMemory<int> Keepers { get; }

    /// <summary>Added to the linear predictor of each row; empty for none.</summary>
    public ReadOnlyMemory<double> Offset { get; init; }

    /// <summary>The link.</summary>
    public Link Link { get; init; } = Link.Logit;

    /// <summary>The ceiling, above the floor and at most 1; null to estimate it (likelihood only).</summary>
    public double? Ceiling { get; init; } = 1;

    /// <summary>The floor, at least 0 and below the ceiling; null to estimate it (likelihood only).</summary>
    public double? Floor { get; init; } = 0;

    /// <summary>Number of rows.</summary>
    public int Rows => Frames.Length;

    /// <summary>The same problem with equal rows (columns and offset bit by bit) made one, in order of first appearance.</summary>
    public BinomialProblem Pooled() => Checked().Pool().Pooled;
}
