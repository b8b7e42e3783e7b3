using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>A term as questions see it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Columns">The columns that state it.</param>
/// <param name="Levels">Its levels, the reference first; empty for a number.</param>
internal sealed record TermLevels(string Name, ImmutableArray<string> Columns, ImmutableArray<string> Levels);
