using System.Collections.Immutable;
using Handhold.Photos;

namespace Handhold.Cli;

/// <summary>What came of photographs.</summary>
/// <param name="Import">The photographs, and what was not taken.</param>
/// <param name="Table">Their frames, with what notes say of them.</param>
/// <param name="Notes">The side table, if there was one.</param>
/// <param name="Idle">Its lines that fit no photograph.</param>
internal sealed record ImportReport(PhotoImport Import, FrameTable Table, string? Notes, ImmutableArray<int> Idle);
