using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Handhold;

/// <summary>Judged frames, in the order given. Never changes.</summary>
[CollectionBuilder(typeof(FrameTable), nameof(Create))]
public sealed class FrameTable : IReadOnlyList<FrameCell>
{
    private readonly ImmutableArray<FrameCell> _cells;

    private FrameTable(ImmutableArray<FrameCell> cells) => _cells = cells;

    /// <summary>A table of these cells.</summary>
    public static FrameTable Create(ReadOnlySpan<FrameCell> cells) => new([.. cells]);

    /// <inheritdoc />
    public int Count => _cells.Length;

    /// <inheritdoc />
    public FrameCell this[int index] => _cells[index];

    /// <summary>Frames judged.</summary>
    public int Frames => _cells.Sum(c => c.Frames);

    /// <summary>Keepers among them.</summary>
    public int Keepers => _cells.Sum(c => c.Keepers);

    /// <summary>Frames not judged.</summary>
    public int Unjudged => _cells.Sum(c => c.Unjudged);

    /// <inheritdoc />
    public IEnumerator<FrameCell> GetEnumerator() => ((IEnumerable<FrameCell>)_cells).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
