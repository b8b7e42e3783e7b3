using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>What one burst showed: setting and exposure of each of its cells, frames and keepers.</summary>
internal sealed record TermBurst(ImmutableArray<TermCell> Cells)
{
    /// <summary>Whether the other has as many frames of the same settings and exposures.</summary>
    internal bool IsShotLike(TermBurst other)
    {
        if (Cells.Length != other.Cells.Length)
            return false;
        for (var i = 0; i < Cells.Length; i++)
            if (Cells[i] with { Keepers = 0 } != other.Cells[i] with { Keepers = 0 })
                return false;
        return true;
    }
}
