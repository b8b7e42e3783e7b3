using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace Handhold;

/// <summary>Judged frames, in the order given. Never changes.</summary>
/// <remarks>
/// Written as a collection: <c>FrameTable table = [new(OneOver(60), frames: 6, keepers: 5), ...];</c> and joined as one:
/// <c>[.. monday, .. tuesday]</c>.
/// </remarks>
[CollectionBuilder(typeof(FrameTable), nameof(Create))]
public sealed class FrameTable : IReadOnlyList<FrameCell>
{
    private readonly ImmutableArray<FrameCell> _cells;

    private FrameTable(ImmutableArray<FrameCell> cells)
    {
        for (var i = 0; i < cells.Length; i++)
            CheckCell(cells[i], i + 1);
        _cells = cells;
        (Frames, Keepers, Unjudged) = (cells.Sum(c => c.Frames), cells.Sum(c => c.Keepers), cells.Sum(c => c.Unjudged));
    }

    /// <summary>A table of these cells.</summary>
    /// <exception cref="CellException">A cell is missing, holds no frames, or its conditions contradict each other.</exception>
    /// <exception cref="OverflowException">More than 2 147 483 647 frames in all.</exception>
    public static FrameTable Create(params ReadOnlySpan<FrameCell> cells) => new([.. cells]);

    /// <summary>A table of single frames, one cell each, in the order given.</summary>
    /// <param name="frames">Frames with a verdict, a grade, both, or neither: those are counted as not judged.</param>
    /// <param name="keeperFromGrade">The lowest grade of a keeper, from 1 up; needed as soon as a frame has a grade and no verdict.</param>
    /// <exception cref="CellException">A grade has no threshold, or a verdict contradicts its grade.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The threshold is below 1, so that unusable frames would be keepers.</exception>
    public static FrameTable FromFrames(IEnumerable<ShotFrame> frames, int? keeperFromGrade = null)
    {
        ArgumentNullException.ThrowIfNull(frames);
        if (keeperFromGrade < 1)
            throw new ArgumentOutOfRangeException(
                nameof(keeperFromGrade),
                keeperFromGrade,
                "Grade 0 is an unusable frame, so keepers start at grade 1 or higher."
            );
        return new([.. frames.Select((frame, i) => CellOf(frame, frame.VerdictAt(keeperFromGrade, i + 1), i + 1))]);
    }

    /// <inheritdoc />
    public int Count => _cells.Length;

    /// <inheritdoc />
    public FrameCell this[int index] => _cells[index];

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>Keepers among them.</summary>
    public int Keepers { get; }

    /// <summary>Frames not judged.</summary>
    public int Unjudged { get; }

    /// <summary>This table, then these cells.</summary>
    public FrameTable Concat(IEnumerable<FrameCell> more) => new([.. _cells, .. more]);

    /// <inheritdoc />
    public IEnumerator<FrameCell> GetEnumerator() => ((IEnumerable<FrameCell>)_cells).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The counts as people say them: <c>47 keepers of 90 frames, 7 exposures, 3 not judged</c>.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Keepers} keepers of {Frames} frames, {_cells.Where(c => c.Frames > 0).DistinctBy(c => c.Exposure).Count()} exposures, {Unjudged} not judged"
        );

    private static FrameCell CellOf(ShotFrame frame, Verdict verdict, int number)
    {
        if (verdict == Verdict.NotJudged && frame.SecondVerdict != Verdict.NotJudged)
            throw new CellException(
                string.Create(CultureInfo.InvariantCulture, $"Frame {number} at {frame.Exposure}"),
                "it has a second verdict and no first.",
                "Make the only verdict the first."
            );
        var judged = verdict == Verdict.NotJudged ? 0 : 1;
        return new(frame.Exposure, judged, verdict == Verdict.Keeper ? 1 : 0)
        {
            Unjudged = 1 - judged,
            SecondLooks = SecondLooks.Of(verdict, frame.SecondVerdict),
            Conditions = frame.Conditions,
        };
    }

    private static void CheckCell(FrameCell cell, int number)
    {
        var fault =
            cell is null ? ("there is no cell.", "Leave out the null.")
            : cell.Frames == 0 && cell.Unjudged == 0 ? ("it holds no frames, judged or not.", "Leave it out, or count its frames.")
            : cell.Conditions.Contradiction();
        if (fault is var (problem, remedy))
        {
            var speed = cell is null ? "" : $" at {cell.Exposure}";
            throw new CellException(string.Create(CultureInfo.InvariantCulture, $"Cell {number}{speed}"), problem, remedy);
        }
    }
}
