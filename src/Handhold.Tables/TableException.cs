using System.Collections.Immutable;

namespace Handhold.Tables;

/// <summary>A table that cannot be read as it is. Nothing of it was used.</summary>
public sealed class TableException : FormatException
{
    internal TableException(ImmutableArray<TableError> errors)
        : base(string.Join('\n', errors)) => Errors = errors;

    /// <summary>The errors in the order of the file, 1 to 20; reading stops at the twentieth.</summary>
    public ImmutableArray<TableError> Errors { get; }
}
