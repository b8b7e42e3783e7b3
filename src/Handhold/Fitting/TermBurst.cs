using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>What one burst showed: setting and exposure of each of its cells, frames and keepers.</summary>
internal sealed record TermBurst(ImmutableArray<TermCell> Cells);
